// Our device's uploader against @tus/server with @tus/file-store.
import assert from 'node:assert/strict';
import {spawn} from 'node:child_process';
import {once} from 'node:events';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import readline from 'node:readline';
import {test} from 'node:test';

import {CutProxy} from './cut_proxy.js';
import {keyOfSeed, random, sha256} from './keys.js';
import {PublicServer} from './public_server.js';

const photoBytes = 1_500_000;
const largeBytes = 3_000_000;
const cutAfter = 1_000_000;
// What may be lost with a connection: a record of TLS that did not come whole, and what @tus/server
// had taken in and not yet written.
const mostLostBytes = 64 * 1024;
const mostOverheadBytes = 48 * 1024;  // several files: sessions and handshakes

const device = keyOfSeed(random(32));

function photos(sizes) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'jambline-peer-photos-'));
  const all = new Map();
  for (const size of sizes) {
    const bytes = random(size);
    const hash = sha256(bytes).toString('hex');
    all.set(hash, bytes);
    fs.writeFileSync(path.join(folder, hash), bytes);
  }
  return {folder, all};
}

// Runs until all is sent; what it asked and was answered, request by request.
async function uploader({server, port, folder, hub = server.identity.open, onAsked = () => {}}) {
  const program = spawn(process.env.JAMBLINE_UPLOADER,
    [String(port), hub.toString('hex'), server.shop.toString('hex'), device.seed.toString('hex'), folder],
    {stdio: ['ignore', 'pipe', 'inherit']});
  const asked = [];
  const lines = readline.createInterface({input: program.stdout});
  lines.on('line', line => {
    asked.push(JSON.parse(line));
    onAsked(asked.at(-1));
  });
  const [code] = await once(program, 'exit');
  return {code, asked};
}

// The offsets of what was sent, a list for each upload.
function offsetsOf(asked) {
  const out = new Map();
  for (const one of asked)
    if (one.method === 'PATCH') out.set(one.target, [...(out.get(one.target) ?? []), one.offset]);
  return [...out.values()];
}

function goesOn(offsets) {
  for (let i = 1; i < offsets.length; ++i) assert.ok(offsets[i] >= offsets[i - 1], `offsets ${offsets}`);
}

// Nothing that the server said it has is sent again, and nothing is left out.
function sentFromWhatWasSaid(asked) {
  const said = new Map();
  for (const one of asked) {
    if (one.method === 'PATCH') assert.equal(one.offset, said.get(one.target) ?? 0);
    if (one.said !== undefined) said.set(one.target, one.said);
  }
}

function arrived(server, all) {
  assert.equal(server.blobs.size, all.size);
  for (const [hash, bytes] of all) assert.ok(server.blobs.get(hash)?.equals(bytes), `the bytes of ${hash}`);
}

async function against(sizes, run) {
  const server = await PublicServer.start(device);
  const sent = photos(sizes);
  try {
    await run(server, sent);
  } finally {
    await server.stop();
    fs.rmSync(sent.folder, {recursive: true});
  }
}

test('pictures arrive byte for byte, each in one go', () => against([1, 70_000, photoBytes], async (server, {folder, all}) => {
  const {code, asked} = await uploader({server, port: server.port, folder});
  assert.equal(code, 0);
  arrived(server, all);
  assert.deepEqual(offsetsOf(asked), [[0], [0], [0]]);
  const again = await uploader({server, port: server.port, folder});
  assert.equal(again.code, 0);
  assert.deepEqual(offsetsOf(again.asked), [], 'what is there is not sent again');
}));

test('every connection dies after 1 MB: it goes on from what the server has', () => against([largeBytes, largeBytes], async (server, {folder, all}) => {
  const proxy = await CutProxy.start(server.port, cutAfter);
  const {code, asked} = await uploader({server, port: proxy.port, folder});
  proxy.stop();
  assert.equal(code, 0);
  arrived(server, all);
  const offsets = offsetsOf(asked);
  assert.equal(offsets.length, all.size, 'one upload a file, resumed and not begun anew');
  for (const one of offsets) {
    goesOn(one);
    assert.ok(one.at(-1) > 0, `offsets ${one}`);
  }
  sentFromWhatWasSaid(asked);
  const resent = proxy.clientBytes - all.size * largeBytes;
  console.log(`our uploader: ${proxy.cuts} cuts, offsets ${offsets.join(' / ')}, ${resent} bytes more than the files`);
  assert.ok(proxy.cuts >= 5, `${proxy.cuts} cuts`);
  assert.ok(resent <= proxy.cuts * mostLostBytes + mostOverheadBytes, `${resent} bytes more`);
}));

test('the server goes in the middle and comes back: a new session, the old upload', () => against([photoBytes], async (server, {folder, all}) => {
  const proxy = await CutProxy.start(server.port, 700_000);
  let restarted = null;
  const {code, asked} = await uploader({server, port: proxy.port, folder, onAsked: one => {
    if (restarted || one.method !== 'PATCH') return;
    proxy.after = 0;
    proxy.shut = true;
    restarted = server.hasPart(500_000).then(() => server.close()).then(() => server.listen()).then(() => {
      proxy.shut = false;
    });
  }});
  await restarted;
  proxy.stop();
  assert.equal(code, 0);
  arrived(server, all);
  const offsets = offsetsOf(asked);
  assert.equal(offsets.length, 1, 'one upload');
  assert.ok(offsets[0].at(-1) > 0, `offsets ${offsets[0]}`);
  goesOn(offsets[0]);
  sentFromWhatWasSaid(asked);
  assert.equal(server.sessions, 2);
}));

test('an upload that the server lost is begun anew', () => against([photoBytes], async (server, {folder, all}) => {
  const proxy = await CutProxy.start(server.port, 700_000);
  let lost = false;
  const {code, asked} = await uploader({server, port: proxy.port, folder, onAsked: one => {
    if (lost || one.method !== 'PATCH') return;
    lost = true;
    proxy.after = 0;
    for (const file of fs.readdirSync(path.join(server.folder, 'files'))) fs.rmSync(path.join(server.folder, 'files', file));
  }});
  proxy.stop();
  assert.equal(code, 0);
  arrived(server, all);
  assert.ok(lost);
  assert.equal(offsetsOf(asked).length, 2);
}));

test('a server of another key is told nothing', () => against([70_000], async (server, {folder}) => {
  const {code, asked} = await uploader({server, port: server.port, folder, hub: device.open});
  assert.equal(code, 1);
  assert.ok(asked.length > 0 && asked.every(one => one.error === 'WrongServer'), JSON.stringify(asked));
  assert.equal(server.sessions, 0);
  assert.equal(server.blobs.size, 0);
}));
