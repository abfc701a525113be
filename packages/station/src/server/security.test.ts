import { describe, expect, it } from 'vitest';
import { hostsAt, refusal, securityHeaders } from './security.ts';

const hosts = hostsAt(4180);

function ask(headers: Record<string, string>, method = 'GET', path = '/api/session'): string | undefined {
  return refusal(new Request(`http://127.0.0.1:4180${path}`, { method, headers }), hosts);
}

describe('refusal', () => {
  it.each(['127.0.0.1:4180', 'localhost:4180', 'LocalHost:4180'])('answers to %s', (host) => {
    expect(ask({ host })).toBeUndefined();
  });

  it.each(['', 'localhost', '127.0.0.1', '127.0.0.1:4181', 'evil.example:4180', '[::1]:4180', 'localhost.:4180'])(
    'does not answer to "%s", not even with the page',
    (host) => {
      expect(ask({ host }, 'GET', '/')).toBe('this server answers to 127.0.0.1:4180 and localhost:4180 only');
    },
  );

  it('goes by the address too, when that names a host', () => {
    const request = new Request('http://evil.example:4180/', { headers: { host: '127.0.0.1:4180' } });
    expect(refusal(request, hosts)).toBeDefined();
  });

  it('knows that port 80 is left out', () => {
    const request = new Request('http://localhost:80/', { headers: { host: 'localhost' } });
    expect(refusal(request, hostsAt(80))).toBeUndefined();
    expect(refusal(request, hosts)).toBeDefined();
  });

  const host = 'localhost:4180';
  const own = { host, origin: 'http://localhost:4180', 'sec-fetch-site': 'same-origin' };
  it.each([
    ['a save of the page', 'PUT', own, true],
    ['a save of a program that is no browser', 'PUT', { host }, true],
    ['a save from another site', 'PUT', { ...own, origin: 'http://evil.example' }, false],
    ['a save from another port', 'PUT', { ...own, origin: 'http://localhost:3000' }, false],
    ['a save from the other name', 'PUT', { ...own, origin: 'http://127.0.0.1:4180' }, false],
    ['a save from a sealed frame', 'PUT', { ...own, origin: 'null' }, false],
    ['a save across sites without origin', 'PUT', { host, 'sec-fetch-site': 'cross-site' }, false],
    ['a save across ports without origin', 'PUT', { host, 'sec-fetch-site': 'same-site' }, false],
    ['a save out of nowhere', 'PUT', { host, 'sec-fetch-site': 'none' }, false],
    ['a read of the page', 'GET', { host, 'sec-fetch-site': 'same-origin' }, true],
    ['a read by hand', 'GET', { host, 'sec-fetch-site': 'none' }, true],
    ['a read from another port', 'GET', { host, 'sec-fetch-site': 'same-site' }, false],
    ['a read with another origin', 'GET', { host, origin: 'http://evil.example' }, false],
  ])('answers %s (%s): %#', (_, method, headers, answered) => {
    expect(ask(headers, method) === undefined).toBe(answered);
  });

  it('lets a link from elsewhere open the page, and posts nothing', () => {
    expect(ask({ host, 'sec-fetch-site': 'cross-site' }, 'GET', '/')).toBeUndefined();
    expect(ask({ host, 'sec-fetch-site': 'cross-site' }, 'POST', '/')).toBeDefined();
  });
});

it('allows no inline script and no foreign source', () => {
  const policy = securityHeaders('abc')['Content-Security-Policy']!;
  const directives = new Map(policy.split('; ').map((each) => [each.split(' ')[0], each.split(' ').slice(1)]));
  expect(directives.get('default-src')).toEqual(["'none'"]);
  expect(directives.get('script-src')).toEqual(["'self'", "'wasm-unsafe-eval'"]);
  expect(directives.get('style-src')).toEqual(["'self'", "'nonce-abc'"]);
  expect(policy).not.toMatch(/unsafe-inline|https?:|\*/);
  expect(securityHeaders()['Content-Security-Policy']).not.toContain('nonce');
});
