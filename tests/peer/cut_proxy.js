// Passes bytes on, and cuts each connection when so many came from the client; 0: never. What had
// come is passed on first.
import {once} from 'node:events';
import net from 'node:net';

export class CutProxy {
  static async start(to, after) {
    const proxy = new CutProxy(to, after);
    proxy.server.listen(0, '127.0.0.1');
    await once(proxy.server, 'listening');
    proxy.port = proxy.server.address().port;
    return proxy;
  }

  constructor(to, after) {
    Object.assign(this, {to, after, cuts: 0, clientBytes: 0, shut: false, open: new Set()});
    this.server = net.createServer(client => this.pass(client));
  }

  pass(client) {
    if (this.shut) return client.destroy();
    const hub = net.connect(this.to, '127.0.0.1');
    let came = 0;
    this.open.add(client);
    hub.on('error', () => client.destroy());
    hub.on('close', () => client.destroy());
    client.on('error', () => hub.end());
    client.on('close', () => {
      hub.end();
      this.open.delete(client);
    });
    hub.pipe(client);
    client.on('data', piece => {
      came += piece.length;
      this.clientBytes += piece.length;
      if (this.after > 0 && came >= this.after) {
        this.cuts += 1;
        hub.end(piece);
        return client.destroy();
      }
      if (!hub.write(piece)) client.pause();
    });
    hub.on('drain', () => client.resume());
  }

  stop() {
    for (const client of this.open) client.destroy();
    this.server.close();
  }
}
