import type { Playing, Way } from '../../../shared/exercise/heard.ts';
import type { StandOwnView } from '../../../shared/protocol/views.ts';

/** How a student wants to answer. */
export type ChosenWay = 'tap' | Way;

/** Whether this Stand may listen. */
export type MayPlay = StandOwnView['playing'];

export const wayName: Readonly<Record<ChosenWay, string>> = {
  tap: 'By tapping',
  play: 'By playing',
  midi: 'By MIDI',
};

/**
 * By what an exercise can be answered here; by tapping always. `wantsMidi`: MIDI was connected or asked for on this device.
 * It comes by wire, so it is offered where guitars in one room would be heard by each other's microphones.
 */
export function waysOffered(
  playing: Playing | null,
  may: MayPlay,
  wantsMidi: boolean,
  hasMidi: boolean,
): readonly ChosenWay[] {
  if (!playing) return ['tap'];
  const mayListen = may === 'on' || may === 'turn';
  return [
    'tap',
    ...(mayListen ? (['play'] as const) : []),
    ...(hasMidi && (mayListen || wantsMidi) ? (['midi'] as const) : []),
  ];
}

/** Whether this browser knows MIDI at all. */
export function browserHasMidi(): boolean {
  return 'requestMIDIAccess' in navigator;
}
