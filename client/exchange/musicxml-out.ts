import type { Exercise } from '../../shared/exercise/exercise.ts';
import { answerKey } from '../../shared/exercise/key.ts';
import { chartWordings } from '../../shared/exercise/chart.ts';
import { instrumentOf } from '../../shared/exercise/roots.ts';
import type { KeyNote } from '../../shared/exercise/verdict.ts';
import { midiAt, type Instrument } from '../../shared/theory/fretboard.ts';
import { tunedStrings } from '../../shared/theory/instrument.ts';
import { noteOnDegree } from '../../shared/theory/interval.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import { pitchClass, pitchNamed, type Pitch } from '../../shared/theory/pitch.ts';
import { spellIn } from '../../shared/theory/spelling.ts';
import { harmonyOf } from './musicxml-harmony.ts';
import { element, writeXml, type XmlElement } from './xml.ts';

const documentType =
  '<!DOCTYPE score-partwise PUBLIC "-//Recordare//DTD MusicXML 4.0 Partwise//EN" "http://www.musicxml.org/dtds/partwise.dtd">';

/** What becomes a document: exercises in their order, each a measure of one part. */
export interface Score {
  readonly title: string;
  readonly exercises: readonly Exercise[];
  readonly naming: NoteNaming;
}

/**
 * The charts as MusicXML 4.0. A chord is its symbol with a frame, over its root as a whole note; what else can be asked
 * is its notes in the order in which they are played. Frets are counted from the capo.
 */
export function musicXmlOf({ title, exercises, naming }: Score): string {
  const measures = exercises.map((exercise, index) =>
    element(
      'measure',
      [
        ...attributesFor(exercise, exercises[index - 1]),
        ...contentOf(exercise, naming),
        ...(index === exercises.length - 1 ? [finalBarline] : []),
      ],
      { number: String(index + 1) },
    ),
  );
  const score = element(
    'score-partwise',
    [
      element('work', [element('work-title', title)]),
      element('identification', [element('encoding', [element('software', 'Rootcall')])]),
      element('part-list', [element('score-part', [element('part-name', partName)], { id: partId })]),
      element('part', measures.length > 0 ? measures : [restMeasure], { id: partId }),
    ],
    { version: '4.0' },
  );
  return writeXml(score, documentType);
}

const partId = 'P1';
const partName = 'Charts';
const finalBarline = element('barline', [element('bar-style', 'light-heavy')], { location: 'right' });
/** A part has at least one measure. */
const restMeasure = element(
  'measure',
  [element('note', [element('rest', [], { measure: 'yes' }), element('duration', 4)])],
  { number: '1' },
);

function contentOf(exercise: Exercise, naming: NoteNaming): readonly XmlElement[] {
  const notes = inOrder(exercise);
  if (exercise.kind !== 'build')
    return [
      words(chartWordings(exercise)[naming].title),
      ...notes.map((note) => noteOf(exercise, note, 'quarter')),
    ];
  return [harmonyOf(exercise, notes), noteOf(exercise, rootOf(exercise, notes), 'whole')];
}

function words(text: string): XmlElement {
  return element('direction', [element('direction-type', [element('words', text)])], { placement: 'above' });
}

/** The root that is asked for, else the lowest; a chord may lack one. */
function rootOf(exercise: Exercise, notes: readonly KeyNote[]): KeyNote | undefined {
  const roots = notes.filter(({ degree }) => degree === '1');
  return roots.find(({ place }) => place.string === exercise.rootString) ?? roots[0];
}

/** As it is played: from the lowest up where no order is asked for; the turn of up and down is played once. */
function inOrder(exercise: Exercise): readonly KeyNote[] {
  const instrument = instrumentOf(exercise);
  const up = answerKey(exercise).toSorted(
    (a, b) => midiAt(instrument, a.place) - midiAt(instrument, b.place) || b.place.string - a.place.string,
  );
  const order = exercise.kind === 'scale' ? exercise.order : undefined;
  if (order === 'down') return up.toReversed();
  return order === 'up-and-down' ? [...up, ...up.slice(0, -1).toReversed()] : up;
}

function noteOf(exercise: Exercise, note: KeyNote | undefined, type: 'quarter' | 'whole'): XmlElement {
  const duration = element('duration', type === 'whole' ? 4 : 1);
  if (!note) return element('note', [element('rest', [], { measure: 'yes' }), duration]);
  const { place, finger } = note;
  const pitch = pitchOf(exercise, note);
  return element('note', [
    // Beyond the ten octaves of the format there is only the place.
    isWritten(pitch) ? pitchElement('pitch', '', pitch) : element('unpitched'),
    duration,
    element('type', type),
    element('notations', [
      element('technical', [
        ...(finger === undefined ? [] : [element('fingering', finger)]),
        element('fret', place.fret),
        element('string', place.string),
      ]),
    ]),
  ]);
}

function pitchOf(exercise: Exercise, { place, degree }: KeyNote): Pitch {
  const midi = midiAt(instrumentOf(exercise), place);
  const { root } = exercise;
  // A place to be named may lie on a degree that the root has no name for.
  const name = noteOnDegree(root, degree) ?? spellIn({ root, degrees: [] }, pitchClass(midi));
  return pitchNamed(name, midi);
}

function isWritten({ octave }: Pitch): boolean {
  return octave >= 0 && octave <= 9;
}

/** `pitch` and `staff-tuning` say a pitch alike, the second with a prefix. */
function pitchElement(
  name: string,
  prefix: string,
  { letter, alteration, octave }: Pitch,
  attributes: XmlElement['attributes'] = {},
): XmlElement {
  return element(
    name,
    [
      element(`${prefix}step`, letter),
      ...(alteration === 0 ? [] : [element(`${prefix}alter`, alteration)]),
      element(`${prefix}octave`, octave),
    ],
    attributes,
  );
}

/** What is new to this measure: its length in quarters and, where it changes, the neck. */
function attributesFor(exercise: Exercise, before: Exercise | undefined): readonly XmlElement[] {
  const beats = beatsOf(exercise);
  const isNewNeck = exercise.instrument !== before?.instrument;
  if (!isNewNeck && before && beats === beatsOf(before)) return [];
  return [
    element('attributes', [
      ...(before ? [] : [element('divisions', 1)]),
      element('time', [element('beats', beats), element('beat-type', 4)], { 'print-object': 'no' }),
      ...(before ? [] : [element('clef', [element('sign', 'TAB')])]),
      ...(isNewNeck ? [staffOf(instrumentOf(exercise))] : []),
    ]),
  ];
}

function beatsOf(exercise: Exercise): number {
  return exercise.kind === 'build' ? 4 : inOrder(exercise).length;
}

/** The lines of tablature from the bottom up, the string with the largest number first; without the capo, then the capo. */
function staffOf({ spec: { tuning, capo } }: Instrument): XmlElement {
  const strings = tunedStrings(tuning).toReversed();
  return element('staff-details', [
    element('staff-lines', strings.length),
    ...strings.map((pitch, index) =>
      pitchElement('staff-tuning', 'tuning-', pitch, { line: String(index + 1) }),
    ),
    ...(capo === 0 ? [] : [element('capo', capo)]),
  ]);
}
