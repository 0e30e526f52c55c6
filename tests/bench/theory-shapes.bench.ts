import { bench, describe } from 'vitest';
import { proposalsFrom } from '../../shared/exercise/proposals.ts';
import { known } from '../../shared/lib/assert.ts';
import { chordSounds } from '../../shared/theory/chord-rule.ts';
import { chordDegrees, degreeAt } from '../../shared/theory/chord.ts';
import { fingeringsOf } from '../../shared/theory/fingering.ts';
import { pitchClassAt, standardGuitar } from '../../shared/theory/fretboard.ts';
import { parseNoteName } from '../../shared/theory/pitch.ts';
import { voicingsOf } from '../../shared/theory/playable.ts';
import { positionsOf } from '../../shared/theory/positions.ts';
import { everyString } from '../../shared/theory/root-places.ts';
import { shapesFrom } from '../../shared/theory/shapes.ts';
import { chordTable, type ChordQuality } from '../../shared/theory/tables/chords.ts';
import { middle, report, sink, type Least } from './timing.ts';

/**
 * What a hand can do, against its simplest part: reading the degrees of one six-string chord and holding them to the
 * chord rule. Goal for the best fingering of any chord over the whole neck: 5,000 µs at worst.
 */
const asked = (Object.keys(chordTable) as readonly ChordQuality[]).flatMap((quality) =>
  'C C# D Eb E F F# G Ab A Bb B'.split(' ').map((name) => {
    return { id: `${name} ${quality}`, chord: { root: known(parseNoteName(name), name), quality } };
  }),
);
const voiced = asked.map(({ id, chord }) => {
  const [best] = voicingsOf(standardGuitar, chord, { most: 1 });
  return { id, chord, places: known(best, id).notes.map((note) => note.place) };
});

function readChords(): void {
  for (const { chord, places } of voiced) {
    const degrees = places.flatMap(
      (spot) => degreeAt(chord.root, chordDegrees(chord.quality), pitchClassAt(standardGuitar, spot)) ?? [],
    );
    sink.value = chordSounds(chord.quality, degrees, { bass: degrees[0] });
  }
}

readChords();
const reading: Least = { name: 'reading one chord', time: middle(readChords) / voiced.length };
report(
  'best fingering of any six-string chord',
  asked,
  ({ chord }) => middle(() => (sink.value = voicingsOf(standardGuitar, chord, { most: 1 })), 5),
  reading,
);
report(
  'best twelve',
  asked,
  ({ chord }) => middle(() => (sink.value = voicingsOf(standardGuitar, chord)), 5),
  reading,
);
report(
  'every fingering of one chord',
  voiced,
  ({ places }) => middle(() => (sink.value = fingeringsOf(standardGuitar, places))),
  reading,
);

/** All that lies round one root, on each string where it lies lowest. Goal for forms and positions: 2,000 µs. */
const rooted = asked.map(({ id, chord }) => ({
  id,
  chord,
  places: everyString(standardGuitar, chord.root).flatMap(([lowest]) => lowest ?? []),
}));
report(
  'forms of a root on six strings, and the positions of its scale',
  rooted,
  ({ chord, places }) =>
    middle(() => {
      sink.value = places.flatMap((place) => shapesFrom(standardGuitar, chord, place, ['form']));
      sink.value = positionsOf(standardGuitar, chord.root, 'major');
    }, 5),
  reading,
);
report(
  'every proposal from one root place, with its check',
  rooted,
  ({ chord: { root, quality }, places: [place] }) =>
    middle(() => {
      const at = { instrument: standardGuitar, root, place: known(place, 'root') };
      sink.value = proposalsFrom(at, { kind: 'chord', quality });
    }, 5),
  reading,
);

describe('chords under a hand, 45 qualities on 12 roots', () => {
  bench('reading degrees and the chord rule', readChords);
  bench('best fingering of each over the whole neck', () => {
    for (const { chord } of asked) sink.value = voicingsOf(standardGuitar, chord, { most: 1 });
  });
});
