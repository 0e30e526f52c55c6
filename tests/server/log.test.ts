import { afterEach, describe, expect, it } from 'vitest';
import { createLog } from '../../server/log.ts';
import { place } from '../../shared/theory/fretboard.ts';
import { find } from '../support/exercises.ts';
import { LiveClass } from '../support/live-class.ts';
import { RawLine } from '../support/raw-line.ts';
import { join } from '../support/people.ts';

/** A log into memory. */
function page(): { readonly write: (line: string) => void; readonly text: () => string } {
  const lines: string[] = [];
  return { write: (line) => void lines.push(line), text: () => lines.join('') };
}

describe('the log', { timeout: 20_000 }, () => {
  let live: LiveClass | undefined;
  afterEach(async () => {
    await live?.stop();
    live = undefined;
  });

  it('names nobody of a whole class, however much it is asked to tell', async () => {
    const written = page();
    live = await LiveClass.start(undefined, { logTo: written });
    const code = live.desk.desk?.code ?? '';
    const { token = '' } = await join(live.server, code, 'Quirin');
    const stand = await live.seat('Kaya');
    await live.ask(find('D'));
    await live.give(stand, { places: [place(2, 3)] });
    await live.give(stand, { places: 'Kaya' });
    await live.hold();
    await live.reveal();
    await fetch(`${live.server.url}/api/join`, { method: 'POST', body: '{"name":"Kaya' });
    await fetch(`${live.server.url}/join/${code}`);
    const stray = new RawLine(live.server);
    await stray.status();
    stray.socket.send('40{"role":"stand","token":"Kaya"}');
    await live.server.restart();
    stray.end();

    // The log was on: it tells of the store.
    expect(written.text()).toContain('store open');
    expect(written.text()).toContain('store closed');
    const cookie = live.teacher.cookie.split('=')[1] ?? '';
    for (const word of ['Kaya', 'Bram', 'Edda', 'Quirin', 'Mara', 'seven short steps', code, token, cookie]) {
      expect(word).not.toBe('');
      expect(written.text()).not.toContain(word);
    }
  });

  it('keeps what an error carries besides its message to itself', () => {
    const written = page();
    const error = Object.assign(new Error('could not read'), { code: 'EBAD', body: '{"name":"Kaya"}' });
    createLog('info', written).error({ error, path: '/api/join' }, 'request failed');
    expect(written.text()).not.toContain('Kaya');
    expect(JSON.parse(written.text())).toMatchObject({
      msg: 'request failed',
      error: { type: 'Error', message: 'could not read', code: 'EBAD', stack: expect.any(String) },
    });
  });

  it.each([
    { name: 'Kaya' },
    { student: { name: 'Kaya', alias: 'Kaya' } },
    { request: { headers: { cookie: 'Kaya' }, body: 'Kaya' } },
    { seat: { token: 'Kaya', tokenHash: 'Kaya' }, passphrase: 'Kaya' },
    { error: 'Kaya' },
  ])('leaves out what a slip of the pen would tell of somebody: %j', (details) => {
    const written = page();
    createLog('info', written).info(details, 'happened');
    expect(written.text()).toContain('happened');
    expect(written.text()).not.toContain('Kaya');
  });
});
