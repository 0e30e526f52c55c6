import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import type { Level } from '../../../../shared/exercise/levels.ts';
import type { Part } from '../../../../shared/plans/plan.ts';

/** What a teacher does with one exercise of a plan. */
export type LineWish =
  | { readonly kind: 'step'; readonly by: -1 | 1 }
  | { readonly kind: 'part'; readonly part: Part }
  | { readonly kind: 'move'; readonly part: Part; readonly before: string | null }
  | { readonly kind: 'duplicate' }
  | { readonly kind: 'take' }
  /** Opens the maker on one level; the one after the last is made from the first. */
  | { readonly kind: 'make'; readonly level: Level }
  | { readonly kind: 'take-level'; readonly level: Level }
  /** Changes places with the easier one beside it. */
  | { readonly kind: 'swap-level'; readonly level: Level }
  | { readonly kind: 'ask-instead'; readonly level: Level; readonly exercise: Exercise };

export class LineEvent extends Event {
  static readonly kind = 'desk-plan-line';
  readonly id: string;
  readonly wish: LineWish;
  constructor(id: string, wish: LineWish) {
    super(LineEvent.kind, { bubbles: true, composed: true });
    this.id = id;
    this.wish = wish;
  }
}
