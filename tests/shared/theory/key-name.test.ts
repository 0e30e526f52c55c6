import { expect, test } from 'vitest';
import { formatKey, parseKey } from '../../../shared/theory/key-name.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { formatNoteName, letters, type Alteration } from '../../../shared/theory/pitch.ts';

const namings: readonly NoteNaming[] = ['english', 'german', 'solfege'];
const alterations: readonly Alteration[] = [-2, -1, 0, 1, 2];

test('PITCH-3: every key reads back in the system it is written in', () => {
  for (const naming of namings)
    for (const letter of letters)
      for (const alteration of alterations)
        for (const mode of ['major', 'minor'] as const) {
          const key = { tonic: { letter, alteration }, mode };
          const text = formatKey(key, naming);
          expect([text, parseKey(text, naming)]).toEqual([text, { ok: true, value: key }]);
        }
});

// Source: common practice.
test.each<[NoteNaming, string, string]>([
  ['english', 'A minor', 'A minor'],
  ['english', ' f# Minor ', 'F# minor'],
  ['english', 'B♭ major', 'Bb major'],
  ['english', 'Am', 'A minor'],
  ['english', 'Eb', 'Eb major'],
  ['english', 'Eb-major', 'Eb major'],
  ['german', 'a-Moll', 'A minor'],
  ['german', 'B-Dur', 'Bb major'],
  ['german', 'H Dur', 'B major'],
  ['german', 'fis-moll', 'F# minor'],
  ['german', 'H minor', 'B minor'],
  ['solfege', 'la mineur', 'A minor'],
  ['solfege', 'si♭ majeur', 'Bb major'],
  ['solfege', 'do maggiore', 'C major'],
  ['solfege', 're menor', 'D minor'],
  ['solfege', 'la m', 'A minor'],
])('%s %j is %s', (naming, text, expected) => {
  const read = parseKey(text, naming);
  expect(read.ok ? `${formatNoteName(read.value.tonic)} ${read.value.mode}` : read.error).toBe(expected);
});

test.each<[NoteNaming, string]>([
  ['english', ''],
  ['english', 'minor'],
  ['english', 'H minor'],
  ['english', 'A dorian'],
  ['english', 'A7'],
  ['english', 'A/E'],
  ['english', 'A minor minor'],
  ['german', 'F# Dur'],
  ['solfege', 'A minor'],
  ['english', '-'.repeat(10_000)],
  ['english', '🎸'.repeat(10_000)],
])('%s %j is refused with a sentence whose examples can be read', (naming, text) => {
  const read = parseKey(text, naming);
  if (read.ok) throw new Error('read');
  expect(read.error.length).toBeLessThan(120);
  const [, major = '', minor = ''] = /like (.+) or (.+)\.$/.exec(read.error) ?? [];
  const modes = [major, minor].map((one) => parseKey(one, naming)).map((one) => one.ok && one.value.mode);
  expect(modes).toEqual(['major', 'minor']);
});
