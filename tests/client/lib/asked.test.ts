import { describe, expect, it } from 'vitest';
import { Asked } from '../../../client/lib/asked.ts';

type State = 'there' | 'refused' | 'insecure';

/** A thing whose person is asked, and answers when the test does. */
class Thing extends Asked<State> {
  isOpen = false;
  opened = 0;
  given: (() => void)[] = [];
  refused: ((why: Error) => void)[] = [];
  readonly told: string[] = [];

  constructor(obstacle: () => State | null = () => null) {
    super({ obstacle, stateOf: () => 'refused' });
    this.onState(() => this.told.push(this.state));
  }

  protected override async open(isWanted: () => boolean): Promise<void> {
    await new Promise<void>((resolve, reject) => {
      this.given.push(resolve);
      this.refused.push(reject);
    });
    if (!isWanted()) return;
    this.isOpen = true;
    this.opened += 1;
    this.become('there');
  }

  protected override release(): void {
    this.isOpen = false;
  }
}

describe('something that a person is asked for', () => {
  it('is asked once, however often it is started, and tells each change', async () => {
    const thing = new Thing();
    const started = [thing.start(), thing.start()];
    expect(thing.given).toHaveLength(1);
    thing.given[0]?.();
    await Promise.all(started);
    await thing.start();
    thing.stop();
    expect(thing.opened).toBe(1);
    expect(thing.isOpen).toBe(false);
    expect(thing.told).toEqual(['asking', 'there', 'off']);
  });

  it('lets go what is given after it was given up, also where it is asked for anew', async () => {
    const thing = new Thing();
    const first = thing.start();
    thing.stop();
    const second = thing.start();
    thing.given[0]?.();
    await first;
    expect(thing.state).toBe('asking');
    thing.given[1]?.();
    await second;
    expect(thing.opened).toBe(1);
    expect(thing.told).toEqual(['asking', 'off', 'asking', 'there']);
  });

  it('says why it was refused, and asks again at the next start', async () => {
    const thing = new Thing();
    const first = thing.start();
    thing.refused[0]?.(new Error('no'));
    await first;
    expect(thing.state).toBe('refused');
    const second = thing.start();
    thing.given[1]?.();
    await second;
    expect(thing.state).toBe('there');
  });

  it('does not say that it was refused once nobody wants it any more', async () => {
    const thing = new Thing();
    const started = thing.start();
    thing.stop();
    thing.refused[0]?.(new Error('no'));
    await started;
    expect(thing.told).toEqual(['asking', 'off']);
  });

  it('asks nobody where something stands in the way', async () => {
    const thing = new Thing(() => 'insecure');
    expect(thing.state).toBe('insecure');
    await thing.start();
    thing.stop();
    expect(thing.given).toEqual([]);
    expect(thing.told).toEqual([]);
  });
});
