// @tus/server with its file store, where our device expects a hub's files: over TLS 1.3 with a
// certificate that the identity key signed, behind the session of PROTOCOL.md section 3. All that is
// said under files/ is said by @tus/server.
import {execFileSync} from 'node:child_process';
import {once} from 'node:events';
import fs from 'node:fs';
import https from 'node:https';
import os from 'node:os';
import path from 'node:path';
import {setTimeout as wait} from 'node:timers/promises';

import {hex, keyOfSeed, random, sessionWords, sha256, signed} from './keys.js';
import {FileStore, Server} from './packages.js';

function selfSigned(folder, key) {
  const file = path.join(folder, 'identity.pem');
  fs.writeFileSync(file, key.secret.export({format: 'pem', type: 'pkcs8'}), {mode: 0o600});
  const certificate = execFileSync('openssl',
    ['req', '-x509', '-new', '-key', file, '-subj', '/CN=public tus server', '-days', '2']);
  fs.rmSync(file);
  return certificate;
}

export class PublicServer {
  static async start(device) {
    const server = new PublicServer(device);
    await server.listen();
    return server;
  }

  constructor(device) {
    this.device = device;
    this.identity = keyOfSeed(random(32));
    this.shop = random(16);
    this.folder = fs.mkdtempSync(path.join(os.tmpdir(), 'jambline-peer-'));
    this.certificate = selfSigned(this.folder, this.identity);
    this.blobs = new Map();  // hash: bytes, of uploads that are whole
    this.port = 0;
    this.sessions = 0;
    this.base = `/v1/${this.shop.toString('hex')}`;
  }

  // As a new process: nothing is known but what lies in the folder.
  async listen() {
    this.token = null;
    const files = path.join(this.folder, 'files');
    this.tus = new Server({
      path: `${this.base}/files`,
      relativeLocation: true,
      datastore: new FileStore({directory: files}),
      // PROTOCOL.md section 2: hash-size-random.
      namingFunction: (req, {sha256: hash}) => `${hash}-${req.headers['upload-length']}-${random(8).toString('hex')}`,
      onUploadFinish: async (req, res, upload) => {
        const bytes = fs.readFileSync(path.join(files, upload.id));
        this.blobs.set(sha256(bytes).toString('hex'), bytes);
        return res;
      },
    });
    this.server = https.createServer(
      {key: this.identity.secret.export({format: 'pem', type: 'pkcs8'}), cert: this.certificate, minVersion: 'TLSv1.3'},
      (req, res) => this.answer(req, res));
    this.server.listen(this.port, '127.0.0.1');
    await once(this.server, 'listening');
    this.port = this.server.address().port;
  }

  // Until one file on its way has come so far.
  async hasPart(bytes) {
    const files = path.join(this.folder, 'files');
    while (!fs.readdirSync(files).some(file => fs.statSync(path.join(files, file)).size >= bytes)) await wait(5);
  }

  async close() {
    this.server.close();
    this.server.closeAllConnections();
    await once(this.server, 'close');
  }

  async stop() {
    await this.close();
    fs.rmSync(this.folder, {recursive: true});
  }

  async answer(req, res) {
    const known = this.token && req.headers.authorization === `Bearer ${this.token}`;
    const open = [`${this.base}/challenge`, `${this.base}/session`].includes(req.url);
    if (!open && !known) return problem(res, 401, '/problems/no-session');
    if (req.url.startsWith(`${this.base}/files`)) return this.tus.handle(req, res);
    const body = JSON.parse(Buffer.concat(await req.toArray()));
    const said = this.said(req.url.slice(this.base.length + 1), body);
    if (!said) return problem(res, 403, '/problems/not-admitted');
    res.setHeader('Content-Type', 'application/json');
    res.end(JSON.stringify(said));
  }

  said(word, body) {
    if (word === 'challenge') {
      this.challenge = random(32);
      return {challenge: this.challenge.toString('hex')};
    }
    if (word === 'have') return {missing: body.hashes.filter(hash => !this.blobs.has(hash))};
    const words = sessionWords({shop: this.shop, hub: this.identity.open, device: this.device.device, challenge: this.challenge});
    if (word !== 'session' || !signed(this.device.open, words, hex(body.proof))) return null;
    this.token = random(32).toString('hex');
    this.sessions += 1;
    return {token: this.token, epoch: '00'.repeat(16), hub_seq: 0, hub_ms: Date.now(), revoked: false, blob_mark: 1, heads: []};
  }
}

function problem(res, status, type) {
  res.writeHead(status, {'Content-Type': 'application/problem+json'});
  res.end(JSON.stringify({type, title: type, status}));
}
