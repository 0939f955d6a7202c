// Ed25519 keys, SHA-256 and what is signed, as PROTOCOL.md says it; by Node's own crypto.
import crypto from 'node:crypto';

const seedHead = Buffer.from('302e020100300506032b657004220420', 'hex');
const keyHead = Buffer.from('302a300506032b6570032100', 'hex');

export const sha256 = (...parts) => parts.reduce((hash, part) => hash.update(part), crypto.createHash('sha256')).digest();
export const hex = text => Buffer.from(text, 'hex');
export const random = count => crypto.randomBytes(count);

export function keyOfSeed(seed) {
  const secret = crypto.createPrivateKey({key: Buffer.concat([seedHead, seed]), format: 'der', type: 'pkcs8'});
  const open = crypto.createPublicKey(secret).export({format: 'der', type: 'spki'}).subarray(keyHead.length);
  return {
    seed,
    secret,
    open,
    device: sha256(open).subarray(0, 16),
    sign: bytes => crypto.sign(null, bytes, secret),
  };
}

export const openKey = bytes =>
  crypto.createPublicKey({key: Buffer.concat([keyHead, bytes]), format: 'der', type: 'spki'});
export const signed = (key, bytes, signature) => crypto.verify(null, bytes, openKey(key), signature);

export const sessionWords = ({shop, hub, device, challenge}) =>
  sha256('jambline session 1', shop, hub, device, challenge);
export const enrolWords = ({shop, hub, code, key, name}) =>
  sha256('jambline enrol 1', shop, hub, code, key, Buffer.from([0]), name);
export function sixDigits({shop, key, hub, nonce}) {
  const hash = sha256('jambline digits 1', shop, key, hub, nonce);
  return String(hash.readBigUInt64BE(0) % 1000000n).padStart(6, '0');
}
