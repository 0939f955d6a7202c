// The real jambline-hub in a folder of its own, and a member of its shop: enrolled by the square
// code, its six digits compared by the operator, with a session. All of it by PROTOCOL.md.
import {execFileSync, spawn} from 'node:child_process';
import {once} from 'node:events';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import readline from 'node:readline';

import {enrolWords, hex, keyOfSeed, random, sessionWords, sixDigits} from './keys.js';
import {ask, PinnedAgent} from './pinned_agent.js';

const program = process.env.JAMBLINE_HUB;

export class Hub {
  static async start() {
    const hub = new Hub();
    hub.above = fs.mkdtempSync(path.join(os.tmpdir(), 'jambline-peer-'));
    hub.folder = path.join(hub.above, 'hub');
    hub.run('init', '--name', 'peer hub');
    hub.run('found');
    hub.port = 0;
    await hub.serve();
    return hub;
  }

  run(command, ...rest) {
    return execFileSync(program, [command, '--folder', this.folder, ...rest], {stdio: ['ignore', 'pipe', 'inherit']}).toString();
  }

  async serve() {
    this.child = spawn(program, ['serve', '--folder', this.folder, '--host', '127.0.0.1', '--port', String(this.port)],
      {stdio: ['ignore', 'ignore', 'pipe']});
    const lines = readline.createInterface({input: this.child.stderr});
    this.port = await new Promise((resolve, reject) => {
      this.child.once('exit', code => reject(new Error(`jambline-hub ended with ${code}`)));
      lines.on('line', line => {
        const event = JSON.parse(line);
        if (event.event === 'serving') resolve(event.status);
      });
    });
  }

  async kill() {
    this.child.removeAllListeners('exit');
    this.child.kill('SIGKILL');
    await once(this.child, 'exit');
  }

  async stop() {
    await this.kill();
    fs.rmSync(this.above, {recursive: true});
  }

  async member() {
    const invitation = new URLSearchParams(this.run('invite', '--text').trim().split('?')[1]);
    const hub = hex(invitation.get('hub'));
    const shop = hex(invitation.get('shop'));
    const code = hex(invitation.get('code'));
    const key = keyOfSeed(random(32));
    const member = new Member(this, {hub, shop, key});
    const name = 'peer tablet';
    const answer = await member.json('enrol', {
      code: code.toString('hex'),
      device_key: key.open.toString('hex'),
      device_name: name,
      brings_shop: false,
      proof: key.sign(enrolWords({shop, hub, code, key: key.open, name})).toString('hex'),
    });
    this.run('admit', sixDigits({shop, key: key.open, hub, nonce: hex(answer.nonce)}));
    await member.signIn();
    return member;
  }
}

export class Member {
  constructor(at, {hub, shop, key}) {
    Object.assign(this, {at, hub, shop, key, agent: new PinnedAgent(hub), token: ''});
    this.base = `/v1/${shop.toString('hex')}`;
  }

  async json(word, body) {
    const answer = await this.ask({method: 'POST', path: `${this.base}/${word}`, body: JSON.stringify(body)});
    if (answer.status !== 200) throw new Error(`${word}: ${answer.status} ${answer.body}`);
    return JSON.parse(answer.body);
  }

  async signIn() {
    this.token = '';
    const device = this.key.device.toString('hex');
    const {challenge} = await this.json('challenge', {device});
    const words = sessionWords({shop: this.shop, hub: this.hub, device: this.key.device, challenge: hex(challenge)});
    const {token} = await this.json('session', {device, challenge, proof: this.key.sign(words).toString('hex')});
    this.token = token;
  }

  ask(request) {
    const headers = this.token ? {Authorization: `Bearer ${this.token}`} : {};
    return ask(this.agent, this.at.port, {...request, headers: {...headers, ...request.headers}});
  }

  async lacks(hashes) {
    return (await this.json('have', {hashes})).missing;
  }

  async download(hash) {
    return this.ask({method: 'GET', path: `${this.base}/blobs/${hash}`});
  }
}
