import { describe, expect, test } from 'vitest';
import { longestFile, textOf, textOfFile } from '../../../client/exchange/file-text.ts';
import { readMusicXml } from '../../../client/exchange/musicxml-in.ts';
import { readPlan } from '../../../client/exchange/read-plan.ts';
import { chartWordings } from '../../../shared/exercise/chart.ts';
import { answerKey } from '../../../shared/exercise/key.ts';
import { known } from '../../../shared/lib/assert.ts';
import { instrumentById, standardGuitar } from '../../../shared/theory/fretboard.ts';

const reader = { instrument: standardGuitar, naming: 'english' } as const;
const documentType =
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 3.1 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';

function score(measures: string, before = documentType): string {
  const head = '<part-list><score-part id="P1"><part-name>Guitar</part-name></score-part></part-list>';
  return `<?xml version="1.0" encoding="UTF-8"?>${before}<score-partwise version="3.1"><work><work-title>Two &amp; three</work-title></work>${head}<part id="P1">${measures}</part></score-partwise>`;
}

interface Frame {
  readonly frets: string;
  readonly kind?: string;
  readonly root?: string;
  readonly more?: string;
  readonly first?: number;
  readonly rest?: string;
}

/** A measure as another program may write it; `frets` from string 6 on, x where it is silent, - between two digits. */
function measure({ frets, kind = 'major', root = 'E', more = '', first, rest = '' }: Frame): string {
  const list = frets.includes('-') ? frets.split('-') : [...frets];
  const notes = list.flatMap((fret, index) =>
    fret === 'x'
      ? []
      : `<frame-note><string>${String(list.length - index)}</string><fret>${fret}</fret></frame-note>`,
  );
  const [step = 'E', sign = ''] = root;
  const alter = sign === '' ? '' : `<root-alter>${sign === '#' ? '1' : '-1'}</root-alter>`;
  const from = first === undefined ? '' : `<first-fret>${String(first)}</first-fret>`;
  return `<measure number="7">${rest}<harmony default-y="40"><root><root-step>${step}</root-step>${alter}</root><kind>${kind}</kind>${more}<frame><frame-strings>${String(list.length)}</frame-strings><frame-frets>5</frame-frets>${from}${notes.join('')}</frame></harmony><note><rest/><duration>4</duration></note></measure>`;
}

function readOne(frame: Frame, instrument = standardGuitar) {
  const read = readMusicXml(score(measure(frame)), { ...reader, instrument });
  if (!read.ok) throw new Error(read.error);
  const [chart] = read.value.charts;
  const [refused] = read.value.refused;
  return {
    title: chart && chartWordings(chart.exercise).english.title,
    frets: chart && fretsOf(chart.exercise),
    exercise: chart?.exercise,
    reason: refused?.reason,
    measure: refused?.measure,
  };
}

function fretsOf(exercise: Parameters<typeof answerKey>[0]): string {
  const { openStrings } = known(instrumentById(exercise.instrument), 'instrument');
  const key = answerKey(exercise);
  return openStrings
    .map((_, index) => String(key.find(({ place }) => place.string === index + 1)?.place.fret ?? 'x'))
    .reverse()
    .join(' ');
}

const degree = (value: number, alter: number, type: string) =>
  `<degree><degree-value>${String(value)}</degree-value><degree-alter>${String(alter)}</degree-alter><degree-type>${type}</degree-type></degree>`;

describe('EXCHANGE-2: chord diagrams of other programs', () => {
  const read: readonly (readonly [what: string, frame: Frame, title: string, frets: string])[] = [
    ['an open chord', { frets: 'x32010', root: 'C' }, 'C major', 'x 3 2 0 1 0'],
    ['a barre', { frets: '355333', root: 'G', kind: 'minor' }, 'G minor', '3 5 5 3 3 3'],
    ['a root with a flat', { frets: 'x68886', root: 'Eb' }, 'E♭ major', 'x 6 8 8 8 6'],
    [
      'a kind that is spelled otherwise',
      { frets: 'x2323x', root: 'B', kind: 'minor-seventh', more: degree(5, -1, 'alter') },
      'Bm7♭5',
      'x 2 3 2 3 x',
    ],
    [
      'an added ninth that is called a second',
      { frets: 'x30030', root: 'C', more: degree(2, 0, 'add') },
      'Cadd9',
      'x 3 0 0 3 0',
    ],
    [
      'a chord that is spelled by degrees alone',
      { frets: '022000', kind: 'other', more: degree(3, -1, 'add') + degree(5, 0, 'add') },
      'E minor',
      '0 2 2 0 0 0',
    ],
    [
      'a bass',
      { frets: '332010', root: 'C', more: '<bass><bass-step>G</bass-step></bass>' },
      'C/G',
      '3 3 2 0 1 0',
    ],
    [
      'frets that count from the first line of the diagram',
      { frets: '133211', root: 'A', first: 5 },
      'A major',
      '5 7 7 6 5 5',
    ],
    [
      'frets that count from the nut, with a first line',
      { frets: '577655', root: 'A', first: 5 },
      'A major',
      '5 7 7 6 5 5',
    ],
  ];
  test.each(read)('%s', (_, frame, title, frets) => {
    expect(readOne(frame)).toMatchObject({ title, frets, reason: undefined });
  });

  const left: readonly (readonly [what: string, frame: Frame, reason: RegExp])[] = [
    [
      'a note that the chord doesn’t have',
      { frets: '022130' },
      /^String 2, fret 3 is D, which E major doesn’t have/,
    ],
    ['a tone that it needs', { frets: '02x400' }, /^E major needs its/],
    ['no root', { frets: 'xx6777', kind: 'dominant-ninth' }, /^No string of the chart sounds the root/],
    [
      'a bass that is not lowest',
      { frets: '022100', more: '<bass><bass-step>B</bass-step></bass>' },
      /^The lowest note/,
    ],
    ['an unknown kind', { frets: '022100', kind: 'Tristan' }, /not known here: “Tristan”/],
    ['no chord', { frets: '022100', kind: 'none' }, /no chord/],
    [
      'another number of strings',
      { frets: '2010', root: 'C' },
      /^The diagram has 4 strings, the instrument 6/,
    ],
    ['a fret beyond the neck', { frets: 'x-x-x-28-29-28' }, /^The instrument has no string 3, fret 28/],
    [
      'a shape that no exercise asks for by itself',
      { frets: 'x32030', root: 'C', more: degree(9, 0, 'add') },
      /^The chord is right, but no exercise here/,
    ],
    ['a fret that is no number', { frets: 'x-x-x-1-0-zero' }, /can’t be read/],
  ];
  test.each(left)('%s is told', (_, frame, reason) => {
    const read = readOne(frame);
    expect(read.exercise).toBeUndefined();
    expect(read.measure).toBe('measure 7');
    expect(read.reason).toMatch(reason);
  });

  test('a chord without a diagram, notes alone and rests', () => {
    const bare =
      '<measure number="1"><harmony><root><root-step>C</root-step></root><kind>major</kind></harmony></measure>';
    const note =
      '<measure number="2"><note><pitch><step>C</step><octave>4</octave></pitch><duration>1</duration></note></measure>';
    const rest = '<measure number="3"><note><rest/><duration>1</duration></note></measure>';
    const read = readMusicXml(score(bare + note + rest), reader);
    expect(read.ok && read.value).toEqual({
      title: 'Two & three',
      charts: [],
      refused: [
        { measure: 'measure 1', reason: 'The chord has no diagram that says its frets.' },
        { measure: 'measure 2', reason: 'There is no chord diagram in it; notes alone are not read.' },
      ],
    });
  });

  test('a chord that comes again is there again', () => {
    const twice = measure({ frets: 'x32010', root: 'C' });
    const read = readMusicXml(score(twice + measure({ frets: '022100' }) + twice), reader);
    const titles = read.ok && read.value.charts.map(({ exercise }) => chartWordings(exercise).english.title);
    expect(titles).toEqual(['C major', 'E major', 'C major']);
  });

  test('the tuning is the file’s, with its capo and as long a neck as it needs', () => {
    const tunings = ['E2', 'A2', 'D3', 'G3', 'B3', 'E4'].map(
      ([step = '', octave = ''], line) =>
        `<staff-tuning line="${String(line + 1)}"><tuning-step>${step}</tuning-step><tuning-octave>${octave}</tuning-octave></staff-tuning>`,
    );
    const staff = (capo: string) =>
      `<attributes><staff-details><staff-lines>6</staff-lines>${tunings.join('')}${capo}</staff-details></attributes>`;
    const ukulele = known(instrumentById('ukulele'), 'ukulele');
    const plain = { frets: 'x32010', root: 'C' };
    expect(readOne({ ...plain, rest: staff('') }, ukulele).exercise?.instrument).toBe('guitar');
    const raised = { ...plain, root: 'D', rest: staff('<capo>2</capo>') };
    expect(readOne(raised, ukulele).exercise?.instrument).toBe('guitar+capo=2');
    const high = { frets: 'x-x-x-21-22-21', root: 'A', rest: staff('') };
    expect(readOne(high, ukulele).exercise?.instrument).toBe('guitar+frets=22');
    expect(readOne(plain, ukulele).reason).toMatch(/^The diagram has 6 strings, the instrument 4/);
  });

  test('a score becomes a plan, with the file’s name where it has no title', () => {
    const untitled = score(measure({ frets: 'x32010', root: 'C' })).replace(/<work>.*<\/work>/, '');
    const read = readPlan(untitled, 'Open chords.musicxml', reader);
    expect(read.ok && read.value).toMatchObject({
      title: 'Open chords',
      refused: [],
      exercises: [{ part: 'new' }],
    });
  });
});

describe('EXCHANGE-4: hostile documents', () => {
  const refused: readonly (readonly [what: string, document: string, sentence: RegExp])[] = [
    [
      'entities that multiply',
      score('&b;', '<!DOCTYPE a [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;&a;">]>'),
      /entities of its own/,
    ],
    [
      'an entity of another file',
      score('&x;', '<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/hostname">]>'),
      /entities of its own/,
    ],
    ['an empty list of its own', score('', '<!DOCTYPE score-partwise\n [ ]>'), /entities of its own/],
    ['nesting', score(`${'<a>'.repeat(5000)}${'</a>'.repeat(5000)}`), /no XML/],
    ['a document that was cut off', score('').slice(0, -20), /no XML/],
    ['tags that cross', '<score-partwise><part></score-partwise></part>', /no XML/],
    ['names that mean something to the language', score('<__proto__><admin>1</admin></__proto__>'), /no XML/],
    ['another kind of document', '<html><body/></html>', /no MusicXML/],
    ['a score by measures', '<score-timewise/>', /by measures/],
    ['nothing', '', /no XML/],
  ];
  test.each(refused)('%s', (_, document, sentence) => {
    const read = readMusicXml(document, reader);
    expect(read.ok ? '' : read.error).toMatch(sentence);
    expect({}).not.toHaveProperty('admin');
  });

  // Its time must not grow with the square of the length: then the runner's time limit ends it.
  test('what comes again and again in a file takes no longer than the file is long', () => {
    expect(readMusicXml('<!DOCTYPE a'.repeat(180_000), reader).ok).toBe(false);
    const tones = degree(9, 0, 'add').repeat(9000);
    expect(readOne({ frets: 'x30030', root: 'C', more: tones }).title).toBe('Cadd9');
  });

  test('an entity that nobody declared stays as it is written, and is cleaned as text', () => {
    const document = score('').replace('Two &amp; three', '&#x202E;&unknown; &lt;b&gt;');
    const read = readMusicXml(document, reader);
    expect(read.ok && read.value.title).toBe('&unknown; <b>');
  });

  test('a file that is too long is not read', async () => {
    let isRead = false;
    const arrayBuffer = () => {
      isRead = true;
      return Promise.resolve(new ArrayBuffer(0));
    };
    const file = await textOfFile({ size: 50 * 1024 * 1024, arrayBuffer });
    expect(file).toEqual({ ok: false, error: 'This file has 50 MB; 2 MB are read.' });
    expect(isRead).toBe(false);
    expect((await textOfFile({ size: longestFile, arrayBuffer })).ok).toBe(true);
  });

  test('a compressed file and one that holds no text', () => {
    const packed = textOf(Uint8Array.of(0x50, 0x4b, 3, 4));
    expect(packed.ok ? '' : packed.error).toMatch(/compressed/);
    expect(textOf(Uint8Array.of(1, 0, 2, 0, 3, 0)).ok).toBe(false);
  });

  test('UTF-16 is read', () => {
    const document = score('');
    const bytes = new Uint8Array(Buffer.from(`\uFEFF${document}`, 'utf16le'));
    expect(textOf(bytes)).toEqual({ ok: true, value: document });
  });
});
