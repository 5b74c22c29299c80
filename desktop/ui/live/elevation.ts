import type { LoopSizes } from './elevation-parts.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A side view in pixels, y downwards. */
export interface Elevation {
  readonly width: number;
  readonly height: number;
  readonly pixelsPerM: number;
  /** By how much heights inside the pan are stretched so that they can be seen; 1 is to scale. */
  readonly stretch: number;
  /** True when the pan lies on a roof above the store, false when it lies beside it. */
  readonly onRoof: boolean;
  readonly groundY: number;
  readonly pan: Box;
  /** Height of the pan's floor at its left (high) and right (low) end. */
  readonly floorLeftY: number;
  readonly floorRightY: number;
  /** Surface of the water in the full pan. */
  readonly surfaceY: number;
  readonly store: Box;
  /** Vessel that takes the pan's water, where that is not the store. */
  readonly reservoir: Box | undefined;
  readonly roof: Box;
}

const sideMarginPx = 26;
/** Room for the labels beside a store that stands beside its pan. */
const labelMarginPx = 92;
/** Room for the pan's labels above it. */
const topMarginPx = 58;
const bottomMarginPx = 22;
const roofThicknessM = 0.18;
const eavesM = 0.35;
/** Between a pan on the ground and the store beside it: room for the pump. */
const gapM = 0.8;
/** Between a reservoir and the store that it warms: room for the exchanger's pipes. */
const exchangerGapM = 0.4;
const leastOnRoofM = 0.3;
/** A water layer thinner than this cannot be seen [px]. */
const leastWaterPx = 5;

/**
 * Places the parts of a loop to scale into a drawing of the given width.
 *
 * One scale serves both directions. Only heights inside the pan may be stretched: a few centimetres
 * of water on metres of roof would else vanish on a small screen.
 */
export function elevationOf(sizes: LoopSizes, widthPx: number, mostHeightPx: number): Elevation {
  const onRoof = sizes.panAboveStoreM >= leastOnRoofM;
  const { widthM, heightM } = onRoof ? roofExtent(sizes) : groundExtent(sizes);
  const roomPx = onRoof ? widthPx : widthPx - labelMarginPx;
  const pixelsPerM = Math.min(
    (roomPx - 2 * sideMarginPx) / widthM,
    (mostHeightPx - topMarginPx - bottomMarginPx) / heightM,
  );
  const stretch = Math.max(1, leastWaterPx / (sizes.waterDepthM * pixelsPerM));
  const scale = { pixelsPerM, stretch, left: (roomPx - widthM * pixelsPerM) / 2 };
  const placed = onRoof ? placeOnRoof(sizes, scale) : placeOnGround(sizes, scale);
  return { width: widthPx, pixelsPerM, stretch, onRoof, height: placed.groundY + bottomMarginPx, ...placed };
}

interface Scale {
  readonly pixelsPerM: number;
  readonly stretch: number;
  readonly left: number;
}
type Placed = Omit<Elevation, 'width' | 'height' | 'pixelsPerM' | 'stretch' | 'onRoof'>;

function roofExtent(sizes: LoopSizes) {
  return {
    widthM: Math.max(sizes.panLengthM + 2 * eavesM, vesselsWidthM(sizes) + 3 * eavesM),
    heightM: panHeightM(sizes) + roofThicknessM + sizes.panAboveStoreM + sizes.storeHeightM,
  };
}

function groundExtent(sizes: LoopSizes) {
  const topM = Math.max(sizes.storeHeightM, sizes.storeHeightM + sizes.panAboveStoreM + panHeightM(sizes));
  return { widthM: eavesM + sizes.panLengthM + gapM + vesselsWidthM(sizes) + eavesM, heightM: topM };
}

/** Store, and reservoir beside it. */
const vesselsWidthM = ({ storeWidthM, reservoir }: LoopSizes) =>
  storeWidthM + (reservoir === undefined ? 0 : exchangerGapM + reservoir.widthM);

const panHeightM = (sizes: LoopSizes) => sizes.wallHeightM + sizes.fallM;

function placeOnRoof(sizes: LoopSizes, scale: Scale): Placed {
  const px = (metres: number) => metres * scale.pixelsPerM;
  const { widthM } = roofExtent(sizes);
  const left = scale.left + px((widthM - sizes.panLengthM) / 2);
  const pan = placePan(sizes, scale, left, topMarginPx);
  const roofTop = pan.pan.bottom;
  const roofBottom = roofTop + px(roofThicknessM);
  const storeTop = roofBottom + px(sizes.panAboveStoreM);
  // The return comes down beside the pan: the store reaches under it, or further where it is wider.
  const right = Math.max(pan.pan.right + 24, scale.left + px(vesselsWidthM(sizes) + eavesM));
  const groundY = storeTop + px(sizes.storeHeightM);
  const storeRight = right - px(vesselsWidthM(sizes) - sizes.storeWidthM);
  return {
    ...pan,
    groundY,
    store: { left: storeRight - px(sizes.storeWidthM), top: storeTop, right: storeRight, bottom: groundY },
    // The reservoir stands where the return comes down.
    reservoir: reservoirBox(sizes, scale, right, groundY),
    roof: { left: scale.left, top: roofTop, right: scale.left + px(widthM), bottom: roofBottom },
  };
}

function placeOnGround(sizes: LoopSizes, scale: Scale): Placed {
  const px = (metres: number) => metres * scale.pixelsPerM;
  const left = scale.left + px(eavesM);
  const vesselsLeft = left + px(sizes.panLengthM + gapM);
  const storeLeft = vesselsLeft + px(vesselsWidthM(sizes) - sizes.storeWidthM);
  const panHeightPx = px(panHeightM(sizes)) * scale.stretch;
  const storeHeightPx = px(sizes.storeHeightM);
  // The pan's floor as seen from the store's top, downwards; it does not lie below the ground.
  const floorPx = Math.min(storeHeightPx, -px(sizes.panAboveStoreM));
  // Whichever reaches higher stands at the upper margin.
  const storeTop = topMarginPx + Math.max(0, panHeightPx - floorPx);
  const groundY = storeTop + storeHeightPx;
  const panBottom = storeTop + floorPx;
  const pan = placePan(sizes, scale, left, panBottom - panHeightPx);
  return {
    ...pan,
    groundY,
    reservoir: reservoirBox(sizes, scale, storeLeft - px(exchangerGapM), groundY),
    store: { left: storeLeft, top: storeTop, right: storeLeft + px(sizes.storeWidthM), bottom: groundY },
    roof: { left: pan.pan.left, top: pan.pan.bottom, right: pan.pan.right, bottom: groundY },
  };
}

function reservoirBox(sizes: LoopSizes, scale: Scale, right: number, bottom: number): Box | undefined {
  if (sizes.reservoir === undefined) return undefined;
  const { heightM, widthM } = sizes.reservoir;
  const { pixelsPerM } = scale;
  return { left: right - widthM * pixelsPerM, top: bottom - heightM * pixelsPerM, right, bottom };
}

/** The pan with its floor falling to the right; the water's mean depth is the site's. */
function placePan(sizes: LoopSizes, scale: Scale, left: number, top: number) {
  const inside = (metres: number) => metres * scale.pixelsPerM * scale.stretch;
  const bottom = top + inside(panHeightM(sizes));
  const meanFloorY = bottom - inside(sizes.fallM) / 2;
  return {
    pan: { left, top, right: left + sizes.panLengthM * scale.pixelsPerM, bottom },
    floorLeftY: bottom - inside(sizes.fallM),
    floorRightY: bottom,
    surfaceY: meanFloorY - inside(sizes.waterDepthM),
  };
}
