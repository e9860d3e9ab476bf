import { expect, test } from 'vitest';
import { makersKey } from '../../src/server/makers-key.ts';

const pairOf = (setCookie: string | number): string => String(setCookie).split(';')[0]!;

test('makersKey makes another key of 128 bits each time, and another secret for the cookie', () => {
  const keys = Array.from({ length: 200 }, () => makersKey(8080, '/'));
  const secrets = keys.map(({ key, admit }) => pairOf(admit(key, '192.168.1.7')).split('=')[1]);
  for (const made of [keys.map(({ key }) => key), secrets]) {
    expect(new Set(made).size).toBe(200);
    for (const text of made) expect(Buffer.from(text!, 'base64url')).toHaveLength(16);
  }
  for (const [index, { key }] of keys.entries()) expect(key).not.toBe(secrets[index]);
});

test('makersKey gives a cookie that no script and no other site can use, and knows it again', () => {
  const { key, admit, holds } = makersKey(8080, '/my/');
  const cookie = admit(key, '192.168.1.7');
  expect(cookie).toMatch(/^cupbook-8080=[\w-]{22}; Path=\/my\/; HttpOnly; SameSite=Strict$/);
  expect(holds(pairOf(cookie))).toBe(true);
  expect(holds(`theme=dark;${pairOf(cookie)}; cupbook=1`)).toBe(true);
  for (const other of [
    undefined,
    '',
    'cupbook-8080',
    'cupbook-8080=',
    `cupbook-8080=${key}`,
    `${pairOf(cookie)}x`,
    `x${pairOf(cookie)}`,
  ]) {
    expect(holds(other), `${other}`).toBe(false);
  }
  expect(makersKey(8080, '/my/').holds(pairOf(cookie))).toBe(false);
});

test('makersKey stops listening to an address that has sent ten wrong keys, and to no other', () => {
  const { key, admit } = makersKey(8080, '/');
  expect(Array.from({ length: 12 }, () => admit('wrong', '192.168.1.66'))).toEqual([...Array(10).fill(403), 429, 429]);
  expect(admit(key, '192.168.1.66')).toBe(429);
  expect(admit(key, '192.168.1.7')).toContain('cupbook-8080=');
  for (const wrong of ['', key.slice(1), `${key}=`, key.toLowerCase()]) expect(admit(wrong, '192.168.1.8')).toBe(403);
});

test('makersKey remembers a bounded number of addresses', () => {
  const { admit } = makersKey(8080, '/');
  for (let tries = 0; tries < 10; tries++) admit('wrong', 'fd00::1');
  expect(admit('wrong', 'fd00::1')).toBe(429);
  for (let address = 2; address < 2000; address++) admit('wrong', `fd00::${address.toString(16)}`);
  // Forgotten, since a thousand others have tried since: of 2^128 keys it tries ten more.
  expect(admit('wrong', 'fd00::1')).toBe(403);
});
