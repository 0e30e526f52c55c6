import { isIPv4 } from 'node:net';
import { describe, expect, it } from 'vitest';
import { isAllowedOrigin, lanAddresses, studentAddresses } from '../../server/addresses.ts';

const reach = { host: '0.0.0.0', port: 8080, https: false, publicUrl: null };

describe('the addresses that students may type', () => {
  it('are those of the local network, then this machine', () => {
    const lan = lanAddresses();
    expect(lan.every((address) => isIPv4(address) && !address.startsWith('127.'))).toBe(true);
    expect(studentAddresses(reach)).toEqual([
      ...lan.map((address) => `http://${address}:8080`),
      'http://localhost:8080',
    ]);
  });

  it('begin with the public one', () => {
    const [first] = studentAddresses({ ...reach, publicUrl: 'https://rootcall.example' });
    expect(first).toBe('https://rootcall.example');
  });

  it('are no more than the server listens at', () => {
    expect(studentAddresses({ ...reach, host: '127.0.0.1' })).toEqual(['http://localhost:8080']);
    expect(studentAddresses({ ...reach, host: '192.168.1.5' })).toEqual(['http://192.168.1.5:8080']);
    expect(studentAddresses({ ...reach, host: 'fd00::5' })).toEqual(['http://[fd00::5]:8080']);
  });

  it('name no port where none has to be typed', () => {
    expect(studentAddresses({ ...reach, host: '192.168.1.5', port: 80 })).toEqual(['http://192.168.1.5']);
    expect(studentAddresses({ ...reach, host: '192.168.1.5', port: 443, https: true })).toEqual([
      'https://192.168.1.5',
    ]);
  });
});

describe('the pages that may call', () => {
  const publicUrl = 'https://rootcall.example';

  it.each([
    ['a page of the host that is asked', 'http://rootcall.test:8080', 'rootcall.test:8080', true],
    ['a page of the public address behind a proxy', publicUrl, '127.0.0.1:8080', true],
    ['no page at all', undefined, '127.0.0.1:8080', true],
    ['a page of another host', 'http://elsewhere.example', 'rootcall.test:8080', false],
    ['a page of another port', 'http://rootcall.test:9090', 'rootcall.test:8080', false],
    ['a page without an address', 'null', 'rootcall.test:8080', false],
    ['a host that only begins like the public one', `${publicUrl}.elsewhere.example`, '127.0.0.1', false],
  ])('%s: from %s to %s is %s', (_what, origin, host, allowed) => {
    expect(isAllowedOrigin({ publicUrl }, { origin, host })).toBe(allowed);
  });
});
