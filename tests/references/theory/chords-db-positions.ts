import guitar from '@tombatossals/chords-db/lib/guitar.json' with { type: 'json' };
import { place } from '../../../shared/theory/fretboard.ts';
import type { ChordQuality } from '../../../shared/theory/tables/chords.ts';
import { note } from './chord-cases.ts';
import errors from './chords-db-errors.json' with { type: 'json' };

/** Source: chords-db 0.5.1 (npm @tombatossals/chords-db, MIT, © 2016 David Rubert): published guitar positions. */
interface Position {
  readonly frets: readonly number[];
  readonly baseFret: number;
  /** As the frets from string 6 on; 0 is none. */
  readonly fingers: readonly number[];
  readonly midi: readonly number[];
}
interface Entry {
  readonly key: string;
  readonly suffix: string;
  readonly positions: readonly Position[];
}

/** Suffixes that differ from our ids. `alt` is 1 3 ♭5 there, as its own positions show; `7sg` is the dominant seventh. */
const qualityOf: Readonly<Record<string, ChordQuality>> = {
  '': 'major',
  m: 'minor',
  alt: 'b5',
  '7sg': '7',
  aug7: '7#5',
  aug9: '9#5',
};

const entries = Object.values(guitar.chords as unknown as Record<string, readonly Entry[]>).flat();

export const positions = entries.flatMap(({ key, suffix, positions: rows }) => {
  const [symbol = '', bass] = suffix.split('/');
  const quality = qualityOf[symbol] ?? (symbol as ChordQuality);
  return rows.map((position, index) => ({
    name: `${key} ${suffix} #${String(index)}`,
    position,
    chord: { root: note(key), quality, bass: bass === undefined ? undefined : note(bass) },
    places: position.frets.flatMap((fret, at) =>
      fret < 0 ? [] : [place(position.frets.length - at, fret === 0 ? 0 : fret + position.baseFret - 1)],
    ),
  }));
});

/** The package's own errors by the name of the position, each with what sounds. */
export const reasons: ReadonlyMap<string, string> = new Map(Object.entries<string>(errors.positions));
