// TLS 1.3 to whoever shows a certificate that one key has signed; nothing is sent to anybody else.
import https from 'node:https';
import tls from 'node:tls';

import {openKey} from './keys.js';

export class PinnedAgent extends https.Agent {
  constructor(hub) {
    super({keepAlive: true});
    this.pinned = openKey(hub);
  }

  createConnection(options, done) {
    const socket = tls.connect({...options, minVersion: 'TLSv1.3', rejectUnauthorized: false});
    let told = false;
    const tell = (error, found) => {
      if (!told) done(error, found);
      told = true;
    };
    socket.once('secureConnect', () => {
      const leaf = socket.getPeerX509Certificate();
      if (leaf?.verify(this.pinned)) return tell(null, socket);
      socket.destroy();
      tell(new Error('the certificate is not signed by the hub that was invited to'));
    });
    socket.once('error', tell);
  }
}

// One request and the whole answer.
export function ask(agent, port, {method, path, headers = {}, body = ''}) {
  return new Promise((resolve, reject) => {
    const bytes = Buffer.from(body);
    const length = bytes.length || ['POST', 'PATCH'].includes(method) ? {'Content-Length': bytes.length} : {};
    const request = https.request(
      {host: '127.0.0.1', port, agent, method, path, headers: {...headers, ...length}}, response => {
        const pieces = [];
        response.on('data', piece => pieces.push(piece));
        response.on('error', reject);
        response.on('end', () => resolve({status: response.statusCode, headers: response.headers, body: Buffer.concat(pieces)}));
      });
    request.on('error', reject);
    request.end(bytes);
  });
}
