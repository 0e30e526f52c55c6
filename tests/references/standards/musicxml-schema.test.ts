import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { qualityIds } from '../../../shared/theory/chord-name.ts';
import { chordKinds } from '../../../shared/theory/tables/musicxml-kinds.ts';
import { counts } from '../counts.ts';

const schema = readFileSync(new URL('musicxml-4.0-subset.xsd', import.meta.url), 'utf8');
const kinds = /<xs:simpleType name="kind-value">([\s\S]*?)<\/xs:simpleType>/.exec(schema)?.[1] ?? '';
const published = [...kinds.matchAll(/value="(.+?)"/g)].map(([, kind = '']) => kind);

test('EXCHANGE-1: every kind of chord that is written is one of the schema', () => {
  const written = new Set(qualityIds.map((quality) => chordKinds[quality].kind));
  expect([...written].filter((kind) => !published.includes(kind))).toEqual([]);
  const { cases, agreed, notHeld } = counts['MusicXML 4.0, schema'];
  expect([published.length, written.size, published.length - written.size]).toEqual([cases, agreed, notHeld]);
});
