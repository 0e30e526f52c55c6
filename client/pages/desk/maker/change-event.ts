import type { Draft } from './draft.ts';

/** The teacher changed something of the exercise in the making. */
export class ChangeEvent extends Event {
  static readonly kind = 'desk-change';
  readonly change: Partial<Draft>;
  constructor(change: Partial<Draft>) {
    super(ChangeEvent.kind);
    this.change = change;
  }
}
