// tus-js-client uploads to our hub: the real program, over TLS, as a member of its shop.
import assert from 'node:assert/strict';
import {after, before, test} from 'node:test';

import {CutProxy} from './cut_proxy.js';
import {Hub} from './hub.js';
import {random, sha256} from './keys.js';
import {DefaultHttpStack, Upload} from './packages.js';
import {PinnedAgent} from './pinned_agent.js';

const photoBytes = 1_500_000;
const cutAfter = 400_000;
// What may be lost with a connection: a record of TLS that did not come whole.
const mostLostBytes = 32 * 1024;
// Requests, records and handshakes of TLS.
const mostOverheadBytes = 24 * 1024;

let hub;
let member;
before(async () => {
  hub = await Hub.start();
  member = await hub.member();
});
after(() => hub.stop());

const photo = (size = photoBytes) => {
  const bytes = random(size);
  return {bytes, hash: sha256(bytes).toString('hex')};
};

// The offsets at which bytes were sent, beside how it ended.
function upload({bytes, hash}, {port = hub.port, agent = new PinnedAgent(member.hub), more = {}} = {}) {
  const offsets = [];
  let one;
  const ended = new Promise((resolve, reject) => {
    one = new Upload(bytes, {
      endpoint: `https://127.0.0.1:${port}${member.base}/files`,
      headers: {Authorization: `Bearer ${member.token}`},
      metadata: {sha256: hash},
      httpStack: new DefaultHttpStack({agent}),
      retryDelays: Array(30).fill(20),
      onBeforeRequest: request => {
        if (request.getMethod() === 'PATCH') offsets.push(Number(request.getHeader('Upload-Offset')));
      },
      onSuccess: resolve,
      onError: reject,
      ...more,
    });
  });
  return {upload: one, ended, offsets};
}

async function isAtTheHub({bytes, hash}) {
  assert.deepEqual(await member.lacks([hash]), []);
  const got = await member.download(hash);
  assert.equal(got.status, 200);
  assert.ok(got.body.equals(bytes), 'the bytes are the same');
}

function goesOn(offsets) {
  for (let i = 1; i < offsets.length; ++i) assert.ok(offsets[i] >= offsets[i - 1], `offsets ${offsets}`);
}

test('three pictures arrive byte for byte, each in one go', async () => {
  for (const size of [1, 70_000, photoBytes]) {
    const one = photo(size);
    assert.deepEqual(await member.lacks([one.hash]), [one.hash]);
    const sending = upload(one);
    sending.upload.start();
    await sending.ended;
    assert.deepEqual(sending.offsets, [0]);
    await isAtTheHub(one);
  }
});

test('a file without bytes is one too', async () => {
  const one = photo(0);
  const sending = upload(one);
  sending.upload.start();
  await sending.ended;
  await isAtTheHub(one);
});

test('every connection dies after 400 kB: it goes on from what the hub has', async () => {
  const proxy = await CutProxy.start(hub.port, cutAfter);
  const one = photo();
  const sending = upload(one, {port: proxy.port});
  sending.upload.start();
  await sending.ended;
  proxy.stop();
  await isAtTheHub(one);
  goesOn(sending.offsets);
  assert.ok(proxy.cuts >= 3, `${proxy.cuts} cuts`);
  assert.ok(sending.offsets.at(-1) > 0, `offsets ${sending.offsets}`);
  const resent = proxy.clientBytes - photoBytes;
  console.log(`tus-js-client: ${proxy.cuts} cuts, offsets ${sending.offsets}, ${resent} bytes more than the file`);
  assert.ok(resent <= proxy.cuts * mostLostBytes + mostOverheadBytes, `${resent} bytes more`);
});

test('client and hub both killed in the middle: a new client goes on with the address it kept', async () => {
  const one = photo();
  let at;
  const first = upload(one, {more: {
    chunkSize: 300_000,
    onChunkComplete: (chunk, accepted) => {
      if (accepted < 900_000) return;
      at = first.upload.url;
      first.upload.abort();
      chunkSeen();
    },
  }});
  let chunkSeen;
  const seen = new Promise(resolve => { chunkSeen = resolve; });
  first.upload.start();
  await seen;
  goesOn(first.offsets);
  await hub.kill();
  await hub.serve();
  await member.signIn();
  const second = upload(one, {more: {uploadUrl: at}});
  second.upload.start();
  await second.ended;
  assert.deepEqual(second.offsets, [900_000]);
  await isAtTheHub(one);
});

test('what is there already is not sent again', async () => {
  const one = photo();
  for (const round of [1, 2]) {
    const proxy = await CutProxy.start(hub.port, 0);
    const sending = upload(one, {port: proxy.port});
    sending.upload.start();
    await sending.ended;
    const at = await member.ask({method: 'HEAD', path: new URL(sending.upload.url).pathname, headers: {'Tus-Resumable': '1.0.0'}});
    assert.equal(at.headers['upload-offset'], String(photoBytes));
    if (round === 2) assert.ok(!sending.offsets.some(offset => offset > 0), `offsets ${sending.offsets}`);
    proxy.stop();
  }
  await isAtTheHub(one);
});

test('other bytes than the name says are refused and gone', async () => {
  const one = photo(70_000);
  const sending = upload({bytes: random(70_000), hash: one.hash}, {more: {retryDelays: null}});
  sending.upload.start();
  await assert.rejects(sending.ended, error => error.originalResponse.getStatus() === 422);
  assert.deepEqual(await member.lacks([one.hash]), [one.hash]);
});

test('what the client terminates is gone', async () => {
  const one = photo();
  let at;
  const sending = upload(one, {more: {
    chunkSize: 300_000,
    onChunkComplete: () => {
      at = new URL(sending.upload.url).pathname;
      sending.upload.abort(true).then(terminated, failed);
    },
  }});
  let terminated;
  let failed;
  const gone = new Promise((resolve, reject) => { [terminated, failed] = [resolve, reject]; });
  sending.upload.start();
  await gone;
  const head = await member.ask({method: 'HEAD', path: at, headers: {'Tus-Resumable': '1.0.0'}});
  assert.equal(head.status, 404);
  assert.deepEqual(await member.lacks([one.hash]), [one.hash]);
});

test('nobody without a session, and no hub of another key', async () => {
  const one = photo(70_000);
  const stranger = upload(one, {more: {headers: {}, retryDelays: null}});
  stranger.upload.start();
  await assert.rejects(stranger.ended, error => error.originalResponse.getStatus() === 401);
  const elsewhere = upload(one, {agent: new PinnedAgent(member.key.open), more: {retryDelays: null}});
  elsewhere.upload.start();
  await assert.rejects(elsewhere.ended, /not signed by the hub/);
  assert.deepEqual(await member.lacks([one.hash]), [one.hash]);
});
