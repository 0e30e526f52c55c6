import { inRoom } from '../../support/sound/rooms.ts';
import { mutedStrums } from '../../support/sound/muted.ts';
import { guitarNames, loadGuitars, sampleRate } from '../../support/sound/samples.ts';
import { speech, voices } from '../../support/sound/speech.ts';
import { chordsOf, hear, notesOf } from './hearing.ts';

/** What was taken for music in so many minutes. */
export interface Taken {
  readonly minutes: number;
  readonly notes: number;
  readonly chords: number;
}

/** Our own sentences, by so many voices of the synthesizer, slowly and fast, through a laptop's microphone. */
export async function talk(count: number): Promise<Taken> {
  let taken: Taken = { minutes: 0, notes: 0, chords: 0 };
  // Both languages and all kinds of voices, however few are asked for.
  const some = voices.filter((_, at) => (at * 7) % voices.length < count);
  for (const [seed, voice] of some.entries())
    for (const words of [125, 155, 185])
      taken = both(taken, takenFrom(inRoom(await speech(voice, words), 'microphone-like', seed)));
  return taken;
}

/** Damped strings strummed in eighths. */
export async function muted(seconds: number): Promise<Taken> {
  const guitars = await loadGuitars();
  return guitarNames
    .map((name, seed) => mutedStrums(guitars[name], seconds, seed))
    .map(({ samples }, seed) => takenFrom(inRoom(samples, 'microphone-like', seed)))
    .reduce(both);
}

function takenFrom(samples: Float32Array): Taken {
  return {
    minutes: samples.length / sampleRate / 60,
    notes: notesOf(hear(samples, 'line')).length,
    chords: chordsOf(hear(samples, 'chord')).filter(({ isFinal }) => isFinal).length,
  };
}

function both(a: Taken, b: Taken): Taken {
  return { minutes: a.minutes + b.minutes, notes: a.notes + b.notes, chords: a.chords + b.chords };
}
