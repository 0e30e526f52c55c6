import { failure, success, type Result } from '../lib/result.ts';
import { formatName, parseName, type NoteNaming } from './naming.ts';
import type { NoteName } from './pitch.ts';
import { chordNames } from './tables/chord-names.ts';
import { chordTable, type ChordQuality } from './tables/chords.ts';

/** A chord as a symbol names it; `bass` is the note after the slash. */
export interface NamedChord {
  readonly root: NoteName;
  readonly quality: ChordQuality;
  readonly bass?: NoteName;
}

/** Every quality, in the table's order. */
export const qualityIds = Object.keys(chordTable) as readonly ChordQuality[];

/** Other ways to write a symbol, after `plain` has taken out signs, brackets and gaps. */
const otherWays: Readonly<Record<string, ChordQuality>> = {
  M: 'major',
  maj: 'major',
  '-': 'minor',
  min: 'minor',
  '°': 'dim',
  o: 'dim',
  '+': 'aug',
  '2': 'sus2',
  sus: 'sus4',
  '4': 'sus4',
  M7: 'maj7',
  ma7: 'maj7',
  Maj7: 'maj7',
  Δ: 'maj7',
  Δ7: 'maj7',
  j7: 'maj7',
  'maj#5': 'aug',
  'm#7': 'mmaj7',
  mM7: 'mmaj7',
  mMaj7: 'mmaj7',
  '-maj7': 'mmaj7',
  '-Δ7': 'mmaj7',
  min7: 'm7',
  '-7': 'm7',
  min6: 'm6',
  '-6': 'm6',
  min9: 'm9',
  '-9': 'm9',
  min11: 'm11',
  M9: 'maj9',
  M11: 'maj11',
  M13: 'maj13',
  ø: 'm7b5',
  ø7: 'm7b5',
  'm7-5': 'm7b5',
  min7b5: 'm7b5',
  '-7b5': 'm7b5',
  '°7': 'dim7',
  o7: 'dim7',
  '7sus': '7sus4',
  '9sus': '9sus4',
  '7-5': '7b5',
  '+7': '7#5',
  aug7: '7#5',
  '7+5': '7#5',
  'maj7+5': 'maj7#5',
  '+maj7': 'maj7#5',
  '+9': '9#5',
  '7-9': '7b9',
};

const bySymbol: ReadonlyMap<string, ChordQuality> = new Map([
  ...Object.entries(otherWays),
  ...qualityIds.map((quality) => [plain(chordNames[quality].symbol), quality] as const),
]);

function plain(symbol: string): string {
  return (
    symbol
      .replaceAll('♭', 'b')
      .replaceAll('♯', '#')
      // Two letters that look alike.
      .replaceAll('∆', 'Δ')
      .replaceAll(/[()\s]/g, '')
      .replace('6/9', '69')
  );
}

/** The quality that stands behind a root: `parseQuality("m7♭5")`, `parseQuality("ø7")` is m7b5. */
export function parseQuality(symbol: string): ChordQuality | undefined {
  return bySymbol.get(plain(symbol));
}

/** "Em7", "F♯m7♭5", "C/G"; a syllable keeps a gap, "mi m7". German writes minor as "Em" too. */
export function formatChordName({ root, quality, bass }: NamedChord, naming: NoteNaming): string {
  const { symbol } = chordNames[quality];
  const gap = naming === 'solfege' && symbol !== '' ? ' ' : '';
  return formatName(root, naming) + gap + symbol + (bass ? `/${formatName(bass, naming)}` : '');
}

/**
 * Reads a chord symbol in a reader's own note names, signs or ASCII: "Em7", "F#m7b5", "C/G", in German "Hm7", in
 * solfège "fa#m7". The failure is a sentence for a person.
 */
export function parseChordName(text: string, naming: NoteNaming): Result<NamedChord, string> {
  const written = text.trim();
  const slash = written.lastIndexOf('/');
  const bass = slash < 0 ? undefined : parseName(written.slice(slash + 1), naming);
  const whole = bass ? written.slice(0, slash) : written;
  // The longest name first: German "Es" before "E", yet "Esus4" is E.
  let root: NoteName | undefined;
  for (let length = Math.min(longestName, whole.length); length > 0; length -= 1) {
    const name = parseName(whole.slice(0, length), naming);
    if (!name) continue;
    root ??= name;
    const quality = parseQuality(whole.slice(length));
    if (quality) return success({ root: name, quality, ...(bass && { bass }) });
  }
  if (!root) return failure(`“${written}” starts with no note name: write a chord like ${example(naming)}.`);
  return failure(`“${written}” is no chord known here: write a chord like ${example(naming)}.`);
}

/** "sol" and two signs. */
const longestName = 'sol##'.length;

function example(naming: NoteNaming): string {
  const c: NoteName = { letter: 'C', alteration: 0 };
  const g: NoteName = { letter: 'G', alteration: 0 };
  return `${formatChordName({ root: g, quality: 'm7' }, naming)} or ${formatChordName({ root: c, quality: 'major', bass: g }, naming)}`;
}
