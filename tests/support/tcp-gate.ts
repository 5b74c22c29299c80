import { connect, createServer, type Server, type Socket } from 'node:net';

/** A way to a TCP port that can be cut and opened again, always at the same address. */
export interface TcpGate {
  readonly port: number;
  cut(): Promise<void>;
  restore(): Promise<void>;
}

export async function openTcpGate(targetPort: number): Promise<TcpGate> {
  const sockets = new Set<Socket>();
  const track = (socket: Socket) => {
    sockets.add(socket);
    socket.on('error', () => socket.destroy());
    socket.once('close', () => sockets.delete(socket));
  };
  let server: Server | undefined;
  const listen = (port: number): Promise<number> =>
    new Promise((resolve, reject) => {
      const opened = createServer((near) => {
        const far = connect(targetPort, '127.0.0.1');
        track(near);
        track(far);
        near.pipe(far).pipe(near);
        near.once('close', () => far.destroy());
        far.once('close', () => near.destroy());
      });
      server = opened;
      opened.once('error', reject);
      opened.listen(port, '127.0.0.1', () => {
        const address = opened.address();
        resolve(typeof address === 'object' && address !== null ? address.port : port);
      });
    });
  const port = await listen(0);
  return {
    port,
    cut: async () => {
      const closing = server;
      server = undefined;
      if (closing === undefined) return;
      const closed = new Promise<void>((resolve) => closing.close(() => resolve()));
      for (const socket of sockets) socket.destroy();
      await closed;
    },
    restore: async () => {
      await listen(port);
    },
  };
}
