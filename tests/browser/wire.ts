import { connect, createServer, type Socket } from 'node:net';

/** A wire between a phone and the kitchen's server that can be cut, and mended, as bad Wi-Fi does. */
export type Wire = { url: string; cut: () => void; mend: () => void; close: () => Promise<void> };

/** @param to port of the server on this machine */
export async function openWire(to: number): Promise<Wire> {
  let whole = true;
  const open = new Set<Socket>();
  const keep = (socket: Socket): void => {
    open.add(socket);
    socket.on('close', () => open.delete(socket));
    socket.on('error', () => socket.destroy());
  };
  const server = createServer((phone) => {
    keep(phone);
    if (!whole) {
      phone.destroy();
      return;
    }
    const kitchen = connect(to, '127.0.0.1');
    keep(kitchen);
    phone.pipe(kitchen);
    kitchen.pipe(phone);
    phone.on('close', () => kitchen.destroy());
    kitchen.on('close', () => phone.destroy());
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  if (typeof address !== 'object' || address === null) throw new Error('openWire: no port');
  const cut = (): void => {
    whole = false;
    for (const socket of open) socket.destroy();
  };
  return {
    url: `http://127.0.0.1:${address.port}`,
    cut,
    mend: () => {
      whole = true;
    },
    close: () => {
      cut();
      return new Promise((done) => server.close(() => done()));
    },
  };
}
