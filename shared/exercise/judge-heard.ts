import type { Answer } from './answer.ts';
import type { Exercise } from './exercise.ts';
import { judgeHeardChord } from './heard-chord.ts';
import { judgeHeardNote } from './heard-note.ts';
import { judgeHeardScale } from './heard-scale.ts';
import { tapMarks } from './heard-taps.ts';
import type { Heard } from './heard.ts';
import { playingOf } from './input.ts';
import type { Verdict } from './verdict.ts';

/** What an answer is worth that was heard, with the taps given for it (SPEC HEARD). */
export function judgeHeard(exercise: Exercise, answer: Answer, heard: Heard): Verdict {
  const isFitting = playingOf(exercise)?.as === heard.kind;
  if (isFitting && exercise.kind === 'build' && heard.kind === 'chord')
    return judgeHeardChord(exercise, answer, heard);
  if (isFitting && exercise.kind !== 'build' && exercise.kind !== 'name' && heard.kind === 'line') {
    const pitches = heard.pitches.map(({ pitch }) => pitch);
    return exercise.kind === 'find'
      ? judgeHeardNote(exercise, answer, pitches)
      : judgeHeardScale(exercise, answer, pitches);
  }
  // Nothing that was asked for can be heard in it.
  const cause = exercise.kind === 'name' ? 'other-name' : 'missing-tone';
  return {
    kind: 'slip',
    cause,
    marks: tapMarks(exercise, answer),
    corrections: [],
    missing: [],
    heard: heard.kind === 'chord' ? { kind: 'chord', missing: [], foreign: [] } : { kind: 'line' },
  };
}
