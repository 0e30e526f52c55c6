import { movedBins } from './bins.ts';
import { noteCount, type Net, type NetHeard } from './net.ts';

/** In semitones. */
const moves = [-1, 0, 1];

/** What the net hears, on average, in these bins as they are, a semitone lower and a semitone higher: surer than each alone. */
export function hearAround(net: Net, bins: Float32Array): NetHeard {
  const heard = moves.map((by) => ({ by, ...net.hear(movedBins(bins, by)) }));
  return {
    notes: Float32Array.from({ length: noteCount }, (_, note) =>
      together(heard.map(({ by, notes }) => notes[note + by])),
    ),
    tones: Float32Array.from({ length: 12 }, (_, tone) =>
      together(heard.map(({ by, tones }) => tones[(tone + by + 12) % 12])),
    ),
  };
}

/** The mean of the log-odds, of those that there are. */
function together(chances: readonly (number | undefined)[]): number {
  const odds = chances.flatMap((chance) =>
    chance === undefined ? [] : [Math.log((chance + 1e-7) / (1 - chance + 1e-7))],
  );
  return 1 / (1 + Math.exp(-odds.reduce((sum, one) => sum + one, 0) / odds.length));
}
