import { failure, success, type Result } from '../lib/result.ts';
import { shortened } from '../lib/shortened.ts';
import { parseChordName } from './chord-name.ts';
import { formatName, parseName, type NoteNaming } from './naming.ts';
import type { RomanKey } from './roman.ts';

/** Words for the two modes, each read beside note names of any system; German and the languages of fixed do. */
const modeWords: Readonly<Record<RomanKey['mode'], readonly string[]>> = {
  major: ['major', 'dur', 'majeur', 'maggiore', 'mayor'],
  minor: ['minor', 'moll', 'mineur', 'minore', 'menor'],
};
const longestKey = 30;

/**
 * Reads a key in a reader's own note names: "A minor", "Am", "A" (major), in German "a-Moll", in solfège "la mineur".
 * The failure is a sentence for a person.
 */
export function parseKey(text: string, naming: NoteNaming): Result<RomanKey, string> {
  const written = text.trim();
  const key =
    written.length > longestKey ? undefined : (inWords(written, naming) ?? asChord(written, naming));
  if (key) return success(key);
  const tonic = { letter: 'A', alteration: 0 } as const;
  const examples = (['major', 'minor'] as const).map((mode) => formatKey({ tonic, mode }, naming));
  return failure(`“${shortened(written)}” is no key known here: write one like ${examples.join(' or ')}.`);
}

function inWords(written: string, naming: NoteNaming): RomanKey | undefined {
  const [, name = '', word = ''] = /^(.+?)[\s-]+(\S+)$/.exec(written) ?? [];
  const tonic = parseName(name, naming);
  const mode = (['major', 'minor'] as const).find((one) => modeWords[one].includes(word.toLowerCase()));
  return tonic && mode && { tonic, mode };
}

/** "Am" and "A", as the key's own chord is written. */
function asChord(written: string, naming: NoteNaming): RomanKey | undefined {
  const chord = parseChordName(written, naming);
  if (!chord.ok || chord.value.bass) return undefined;
  const { root, quality } = chord.value;
  return quality === 'major' || quality === 'minor' ? { tonic: root, mode: quality } : undefined;
}

/** "A minor", "F♯ major", with German names "H minor". */
export function formatKey({ tonic, mode }: RomanKey, naming: NoteNaming): string {
  return `${formatName(tonic, naming)} ${mode}`;
}
