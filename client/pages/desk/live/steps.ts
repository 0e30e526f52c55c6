import type { DeskCommand } from '../../../../shared/protocol/commands.ts';
import type { DeskRoundView, DeskView } from '../../../../shared/protocol/views.ts';

/** The teacher's steps: the bottom bar's buttons, and what keys and pedals do. */
export type Step = 'ask' | 'hold' | 'reveal' | 'next' | 'void' | 'undo';

/** What a step comes to now: a command, or the exercise maker where nothing planned is left. */
export type StepAction =
  | { readonly kind: 'command'; readonly command: DeskCommand }
  | { readonly kind: 'make' }
  | { readonly kind: 'nothing' };

const nothing: StepAction = { kind: 'nothing' };

function command(command: DeskCommand): StepAction {
  return { kind: 'command', command };
}

/** The round that is on the Stands, or null while they rest. */
export function currentRound(view: DeskView): DeskRoundView | null {
  return view.stage === 'round' ? (view.rounds.at(-1) ?? null) : null;
}

/** What Ask would ask from the plan. */
export function planned(view: DeskView) {
  return view.plan?.exercises[view.cursor] ?? null;
}

/** Where the walk stands that is on Board and Stands, if one is. */
function walkOf({ show }: DeskView) {
  return show?.kind === 'chart' ? show.step : null;
}

/** Another chart of the walk, counted from 1; after the last one nothing is shown. */
function walkTo(view: DeskView, number: number): StepAction {
  const walk = walkOf(view);
  if (!walk || number < 1) return nothing;
  return command(number > walk.of ? { kind: 'show-nothing' } : { kind: 'show-step', at: number - 1 });
}

/** The one step that is sensible now; null once the class is over. */
export function nextStep(view: DeskView): Step | null {
  if (view.closed) return null;
  if (walkOf(view)) return 'next';
  switch (currentRound(view)?.phase) {
    case 'open':
      return 'hold';
    case 'held':
      return 'reveal';
    case 'revealed':
      return 'next';
    case undefined:
      return 'ask';
  }
}

/** Whether Ask would put the last exercise once more: from the hold on, until Next. */
export function asksAgain(view: DeskView): boolean {
  const phase = currentRound(view)?.phase;
  return phase === 'held' || phase === 'revealed';
}

/** What a step does now. `nothing` is what its button shows as unavailable. */
export function actionOf(step: Step, view: DeskView): StepAction {
  if (view.closed) return nothing;
  const round = currentRound(view);
  const walk = walkOf(view);
  switch (step) {
    case 'ask':
      if (round?.phase === 'open') return nothing;
      if (round) return command({ kind: 'ask-again' });
      return planned(view) ? command({ kind: 'ask-planned', seconds: null }) : { kind: 'make' };
    case 'hold':
      return round?.phase === 'open' ? command({ kind: 'hold' }) : nothing;
    case 'reveal':
      return round?.phase === 'held' ? command({ kind: 'reveal' }) : nothing;
    case 'next':
      if (walk) return walkTo(view, walk.number + 1);
      if (round) return round.phase === 'open' ? nothing : command({ kind: 'next' });
      return moveTo(view, view.cursor + 1);
    case 'void':
      return round ? command({ kind: 'void' }) : nothing;
    case 'undo':
      return canUndo(view) ? command({ kind: 'undo' }) : nothing;
  }
}

/**
 * The pedal's other side: one step back, and never a step that takes answers away.
 * A walk: the chart before · held: open again · revealed: ask again · at rest: the exercise before · open: nothing.
 */
export function stepBack(view: DeskView): StepAction {
  if (view.closed) return nothing;
  const walk = walkOf(view);
  if (walk) return walkTo(view, walk.number - 1);
  switch (currentRound(view)?.phase) {
    case 'open':
      return nothing;
    case 'held':
      return command({ kind: 'undo' });
    case 'revealed':
      return command({ kind: 'ask-again' });
    case undefined:
      return moveTo(view, view.cursor - 1);
  }
}

function moveTo(view: DeskView, index: number): StepAction {
  return view.plan?.exercises[index] ? command({ kind: 'select', index }) : nothing;
}

/** What was just done: a hold, or a void. Rounds taken back earlier are brought back from the list of rounds. */
function canUndo(view: DeskView): boolean {
  return currentRound(view)?.phase === 'held' || view.rounds.at(-1)?.voided === true;
}
