import { type AddressInfo, connect, createServer, type Socket } from 'node:net';

/** A network that breaks on demand, between a phone and a server. */
export type CuttingProxy = {
  url: string;
  /** Of the connections from now on: cut after so many bytes upward or downward; null = let all through. */
  cut: (where: { up?: number; down?: number } | null) => void;
  /** How many connections were cut. */
  cuts: () => number;
  close: () => Promise<void>;
};

export async function cuttingProxy(target: string): Promise<CuttingProxy> {
  const port = Number(new URL(target).port);
  let where: { up?: number; down?: number } | null = null;
  let cuts = 0;
  const open = new Set<Socket>();
  const proxy = createServer((phone) => {
    const server = connect(port, '127.0.0.1');
    const left = { up: where?.up ?? Number.POSITIVE_INFINITY, down: where?.down ?? Number.POSITIVE_INFINITY };
    for (const socket of [phone, server]) open.add(socket);
    const end = () => {
      for (const socket of [phone, server]) {
        socket.destroy();
        open.delete(socket);
      }
    };
    const pass = (way: 'up' | 'down', data: Buffer) => {
      const to = way === 'up' ? server : phone;
      if (data.length <= left[way]) {
        left[way] -= data.length;
        to.write(data);
        return;
      }
      cuts += 1;
      if (left[way] === 0) end();
      else to.write(data.subarray(0, left[way]), end);
      left[way] = 0;
    };
    phone
      .on('data', (data) => pass('up', data))
      .on('error', end)
      .on('close', end);
    server
      .on('data', (data) => pass('down', data))
      .on('error', end)
      .on('close', end);
  });
  await new Promise<void>((done) => proxy.listen(0, '127.0.0.1', done));
  return {
    url: `http://127.0.0.1:${(proxy.address() as AddressInfo).port}`,
    cut: (asked) => {
      where = asked;
    },
    cuts: () => cuts,
    close: () =>
      new Promise((done) => {
        for (const socket of open) socket.destroy();
        proxy.close(() => done());
      }),
  };
}
