import { surfaces } from './colours.ts';
import { seriesLooks, seriesTitle } from './series.ts';
import { drawStill, type StillChart, stillPixelRatio } from './still-chart.ts';

export interface PictureWords {
  readonly title: string;
  readonly subtitle: string;
}

const widthPx = 1400;
const chartPx = 900;
const marginPx = 40;
const headPx = 96;
const linePx = 28;
const columns = 4;

/** The curves as a PNG on a plain ground, with title, day, site and the name of each curve. */
export async function dayPicture(chart: StillChart, words: PictureWords): Promise<Blob> {
  const keyPx = Math.ceil(chart.names.length / columns) * linePx;
  const canvas = document.createElement('canvas');
  canvas.width = widthPx + 2 * marginPx;
  canvas.height = headPx + chartPx + keyPx + 2 * marginPx;
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('this browser draws no pictures');
  context.fillStyle = surfaces[chart.look.scheme];
  context.fillRect(0, 0, canvas.width, canvas.height);
  writeHead(context, words);
  const curves = document.createElement('canvas');
  curves.width = widthPx / stillPixelRatio;
  curves.height = chartPx / stillPixelRatio;
  const release = drawStill(curves, chart);
  context.drawImage(curves, marginPx, headPx + marginPx);
  release();
  writeKey(context, chart, headPx + chartPx + marginPx + linePx);
  return await pngOf(canvas);
}

const ink = '#1d1d1b';

function writeHead(context: CanvasRenderingContext2D, { title, subtitle }: PictureWords): void {
  context.fillStyle = ink;
  context.font = '600 32px sans-serif';
  context.fillText(title, marginPx, marginPx + 28);
  context.font = '20px sans-serif';
  context.fillText(subtitle, marginPx, marginPx + 64);
}

function writeKey(context: CanvasRenderingContext2D, { names, look }: StillChart, topPx: number): void {
  context.font = '18px sans-serif';
  context.lineWidth = 3;
  names.forEach((name, index) => {
    const x = marginPx + (index % columns) * (widthPx / columns);
    const y = topPx + Math.floor(index / columns) * linePx;
    context.strokeStyle = seriesLooks[name].colour[look.scheme];
    context.setLineDash([...seriesLooks[name].dash]);
    context.beginPath();
    context.moveTo(x, y - 6);
    context.lineTo(x + 40, y - 6);
    context.stroke();
    context.fillText(seriesTitle(name), x + 50, y);
  });
}

function pngOf(canvas: HTMLCanvasElement): Promise<Blob> {
  const { promise, resolve, reject } = Promise.withResolvers<Blob>();
  canvas.toBlob(
    (blob) => (blob === null ? reject(new Error('no picture came')) : resolve(blob)),
    'image/png',
  );
  return promise;
}
