// The rules of tus 1.0.0 that a server has to keep, row by row (tests/outside/tus_rules.csv, where the
// text of each stands), against the running hub over the network.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import {after, before, test} from 'node:test';

import {Hub} from './hub.js';
import {sha256} from './keys.js';

const lines = fs.readFileSync(new URL('../outside/tus_rules.csv', import.meta.url), 'utf8')
  .split('\n').filter(line => line && !line.startsWith('#'));
const columns = lines.shift().split(',');
const rows = lines.map(line => {
  const cells = line.split(',');
  assert.equal(cells.length, columns.length, line);
  return Object.fromEntries(cells.map((cell, at) => [columns[at], cell]));
});
const parts = (text, between) => (text ? text.split(between) : []);
const version = {'Tus-Resumable': '1.0.0'};
const sentBefore = {made: 0, seventy: 70, whole: 100, dropped: 3};

let hub;
let member;
before(async () => {
  hub = await Hub.start();
  member = await hub.member();
});
after(() => hub.stop());

const named = bytes => `sha256 ${Buffer.from(sha256(bytes).toString('hex')).toString('base64')}`;
const filled = (value, bytes) => ({'{metadata}': named(bytes), '{no bytes}': named('')})[value] ?? value;

function fits(found = '', value) {
  if (value === '*') return found !== '';
  if (!/^[~!]/.test(value)) return found === value;
  return found.split(',').includes(value.slice(1)) === value.startsWith('~');
}

async function uploadBefore(row, bytes) {
  if (row.given === 'none') return '';
  const made = await member.ask({method: 'POST', path: `${member.base}/files`,
    headers: {...version, 'Upload-Length': '100', 'Upload-Metadata': named(bytes)}});
  assert.equal(made.status, 201);
  const place = made.headers.location;
  const sent = sentBefore[row.given];
  if (sent > 0) {
    const patch = await member.ask({method: 'PATCH', path: place, body: bytes.subarray(0, sent),
      headers: {...version, 'Content-Type': 'application/offset+octet-stream', 'Upload-Offset': '0'}});
    assert.equal(patch.status, 204);
  }
  if (row.given === 'dropped') assert.equal((await member.ask({method: 'DELETE', path: place, headers: version})).status, 204);
  return place;
}

for (const row of rows) {
  test(row.name, async () => {
    const bytes = Buffer.from(row.name.padEnd(100, 'b').slice(0, 100));
    const upload = await uploadBefore(row, bytes);
    const nowhere = `${member.base}/files/${sha256('nobody made it').toString('hex')}-100-0000000000000000`;
    const headers = Object.fromEntries(parts(row.headers, '|').map(one => {
      const [name, value] = one.split(': ');
      return [name, filled(value, bytes)];
    }));
    const [from, to] = parts(row.sent, '-').map(Number);
    const answer = await member.ask({method: row.method, path: {upload, nowhere, files: `${member.base}/files`}[row.at], headers,
      body: bytes.subarray(from ?? 0, to ?? 0)});
    assert.ok(row.status.split(' ').includes(String(answer.status)), `${answer.status} ${answer.body}`);
    for (const one of parts(row.answers, '|')) {
      const [name, value] = one.split(': ');
      assert.ok(fits(answer.headers[name.toLowerCase()], filled(value, bytes)), `${one}: ${answer.headers[name.toLowerCase()]}`);
    }
    for (const name of parts(row.lacks, '|')) assert.equal(answer.headers[name.toLowerCase()], undefined, name);
    if (!row.then) return;
    const head = await member.ask({method: 'HEAD', path: upload, headers: version});
    assert.equal(head.status === 200 ? head.headers['upload-offset'] : 'gone', row.then);
  });
}
