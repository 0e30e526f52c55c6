import { easeOf } from '../../../../shared/exercise/ease.ts';
import { answerKey } from '../../../../shared/exercise/key.ts';
import type { Exercise } from '../../../../shared/exercise/exercise.ts';
import { progressionRow, type RowChord, type RowWish } from '../../../../shared/exercise/progression-row.ts';
import {
  proposalsFrom,
  type Proposal,
  type RootAt,
  type Wish,
} from '../../../../shared/exercise/proposals.ts';
import type { KeyNote } from '../../../../shared/exercise/verdict.ts';
import { joinWalk, type JoinWalk } from '../../../../shared/exercise/walks.ts';
import { success, type Result } from '../../../../shared/lib/result.ts';
import { instrumentById, standardGuitar, type InstrumentId } from '../../../../shared/theory/fretboard.ts';
import type { Ease, HandSize } from '../../../../shared/theory/hand.ts';
import { everyString } from '../../../../shared/theory/root-places.ts';

/** What takes longer than a frame of the screen, and is therefore worked out beside the page. */
export type Ask =
  | (OnInstrument<RootAt> & {
      readonly kind: 'proposals';
      readonly wish: Wish;
      readonly hand: HandSize;
    })
  | (OnInstrument<Omit<RootAt, 'place'>> & { readonly kind: 'every-string'; readonly wish: Wish })
  | (OnInstrument<RowWish> & { readonly kind: 'row' });

type OnInstrument<T> = Omit<T, 'instrument'> & { readonly instrument: InstrumentId };

/** With the notes of its chart. */
type Drawn<T> = T & { readonly notes: readonly KeyNote[] };
export type ProposalCard = Drawn<Proposal> & { readonly ease: Result<Ease, string> };
export type ChordCard = Drawn<RowChord>;

export interface Found {
  readonly cards: readonly ProposalCard[];
  readonly join: JoinWalk | null;
}

export interface Answers {
  readonly proposals: Found;
  /** From the thickest string on. */
  readonly 'every-string': readonly Exercise[];
  readonly row: Result<readonly ChordCard[], string>;
}

export type AskOf<Kind extends Ask['kind']> = Extract<Ask, { kind: Kind }>;

export function answerTo(ask: Ask): Answers[Ask['kind']] {
  switch (ask.kind) {
    case 'proposals':
      return proposals(ask);
    case 'every-string':
      return onEveryString(ask);
    case 'row':
      return row(ask);
  }
}

export function proposals({ instrument, root, place, wish, hand }: AskOf<'proposals'>): Found {
  const at = { instrument: neckOf(instrument), root, place };
  return {
    cards: proposalsFrom(at, wish).map((proposal) => ({
      ...drawn(proposal),
      ease: easeOf(proposal.exercise, hand),
    })),
    join: wish.kind === 'scale' ? (joinWalk(at, wish.tones) ?? null) : null,
  };
}

/** The same wish from the lowest root of each string that has an answer to it. */
export function onEveryString({ instrument, root, wish }: AskOf<'every-string'>): readonly Exercise[] {
  const neck = neckOf(instrument);
  return everyString(neck, root)
    .toReversed()
    .flatMap((places) => {
      for (const place of places) {
        const found = proposalsFrom({ instrument: neck, root, place }, wish);
        const best = found.find(isUsual) ?? found.find(({ lies }) => lies === 'around') ?? found[0];
        if (best) return [best.exercise];
      }
      return [];
    });
}

/** What a teacher would show first: a form, or a position of the hand. */
function isUsual({ exercise }: Proposal): boolean {
  if (exercise.kind === 'scale') return exercise.strictness === 'place' && exercise.perString === undefined;
  return exercise.kind === 'build' && exercise.voicing.kind === 'form';
}

export function row({ instrument, ...wish }: AskOf<'row'>): Answers['row'] {
  const laid = progressionRow({ ...wish, instrument: neckOf(instrument) });
  return laid.ok ? success(laid.value.map(drawn)) : laid;
}

function drawn<T extends { readonly exercise: Exercise }>(card: T): Drawn<T> {
  return { ...card, notes: answerKey(card.exercise) };
}

function neckOf(id: InstrumentId) {
  return instrumentById(id) ?? standardGuitar;
}
