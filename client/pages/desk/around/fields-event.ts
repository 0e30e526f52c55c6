import type { AroundFields } from './fields.ts';

/** The teacher changed some of the fields. */
export class FieldsEvent extends Event {
  static readonly kind = 'desk-fields';
  readonly change: Partial<AroundFields>;
  constructor(change: Partial<AroundFields>) {
    super(FieldsEvent.kind);
    this.change = change;
  }
}
