import { failure, success, type Result } from '../../shared/lib/result.ts';
import type { BuildExercise } from '../../shared/exercise/exercise.ts';
import type { NamedChord } from '../../shared/theory/chord-name.ts';
import { isOnNeck, place, type Instrument, type Place } from '../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import { letters, type Alteration, type NoteName } from '../../shared/theory/pitch.ts';
import { mostPlanned } from '../../shared/protocol/plans.ts';
import { plainText } from '../../shared/protocol/plain-text.ts';
import { qualityOf } from './chord-kind.ts';
import { instrumentRead, reaching, wholeNumber } from './musicxml-staff.ts';
import { exerciseShowing, type ShownChord, type ShownNote } from './shown-chord.ts';
import { childOf, childrenOf, readXml, type XmlElement } from './xml.ts';

/** What of a file becomes exercises, and what doesn't, measure by measure. */
export interface ReadScore {
  readonly title: string;
  readonly charts: readonly { readonly measure: string; readonly exercise: BuildExercise }[];
  readonly refused: readonly { readonly measure: string; readonly reason: string }[];
}

export interface Reader {
  /** Played where the file doesn't say how its strings are tuned. */
  readonly instrument: Instrument;
  readonly naming: NoteNaming;
}

/** Reads every chord diagram of a MusicXML document, whatever program wrote it. */
export function readMusicXml(text: string, reader: Reader): Result<ReadScore, string> {
  const document = readXml(text);
  if (!document.ok) return document;
  const score = document.value;
  if (score.name !== 'score-partwise')
    return failure(
      score.name === 'score-timewise'
        ? 'This is MusicXML by measures (score-timewise). Save it by parts (score-partwise).'
        : 'This is no MusicXML: it has no score in it.',
    );
  const parts = childrenOf(score, 'part');
  const show = remembering(reader.naming);
  const measures = parts.flatMap((part, index) =>
    measuresOf(part, reader.instrument, show, parts.length > 1 ? `part ${String(index + 1)}, ` : ''),
  );
  const charts: ReadScore['charts'][number][] = [];
  const refused: ReadScore['refused'][number][] = [];
  for (const { measure, harmony, at } of measures) {
    const read = !harmony
      ? failure('There is no chord diagram in it; notes alone are not read.')
      : charts.length >= mostPlanned
        ? failure(`A plan has room for ${String(mostPlanned)} exercises.`)
        : chartOf(harmony, at);
    if (read.ok) charts.push({ measure, exercise: read.value });
    else refused.push({ measure, reason: read.error });
  }
  return success({ title: titleOf(score), charts, refused });
}

type Show = (chord: ShownChord) => Result<BuildExercise, string>;

/** Different diagrams of a file: to look for an exercise takes a moment. */
const mostDiagrams = 2 * mostPlanned;

/** Looks once for each diagram: a song has few, many times. */
function remembering(naming: NoteNaming): Show {
  const known = new Map<string, ReturnType<Show>>();
  return (chord) => {
    const key = JSON.stringify({ ...chord, instrument: chord.instrument.id });
    const found = known.get(key);
    if (found) return found;
    if (known.size >= mostDiagrams)
      return failure(`Of one file ${String(mostDiagrams)} different diagrams are looked at.`);
    const shown = exerciseShowing(chord, naming);
    known.set(key, shown);
    return shown;
  };
}

/** Where a chord stands: the neck at that point, and the notes under it. */
interface Spot {
  readonly instrument: Instrument;
  readonly show: Show;
  /** The group's own instrument, whose neck ends where it ends. */
  readonly isOwn: boolean;
  readonly notes: readonly XmlElement[];
}

interface Met {
  readonly measure: string;
  readonly harmony: XmlElement | undefined;
  readonly at: Spot;
}

function measuresOf(part: XmlElement, own: Instrument, show: Show, before: string): readonly Met[] {
  let instrument = own;
  return childrenOf(part, 'measure').flatMap((element, index): readonly Met[] => {
    const number = plainText(element.attributes['number'] ?? '').slice(0, 12);
    const measure = `${before}measure ${number === '' ? String(index + 1) : number}`;
    const notes = childrenOf(element, 'note');
    const here = (): Spot => ({ instrument, show, notes, isOwn: instrument === own });
    const met: Met[] = [];
    for (const child of element.children) {
      if (child.name === 'attributes') instrument = instrumentRead(child, instrument, own);
      if (child.name === 'harmony') met.push({ measure, harmony: child, at: here() });
    }
    const isEmpty = notes.every((note) => childOf(note, 'rest'));
    return met.length > 0 || isEmpty ? met : [{ measure, harmony: undefined, at: here() }];
  });
}

function chartOf(harmony: XmlElement, at: Spot): Result<BuildExercise, string> {
  const frame = childOf(harmony, 'frame');
  if (!frame) return failure('The chord has no diagram that says its frets.');
  const chord = chordOf(harmony);
  if (!chord.ok) return chord;
  const strings = wholeNumber(childOf(frame, 'frame-strings'));
  const ofNeck = at.instrument.openStrings.length;
  if (strings !== undefined && strings !== ofNeck)
    return failure(
      `The diagram has ${String(strings)} strings, the instrument ${String(ofNeck)}. The file doesn’t say how they are tuned.`,
    );
  const first = wholeNumber(childOf(frame, 'first-fret')) ?? 1;
  const notes = childrenOf(frame, 'frame-note').map(frameNoteOf);
  if (notes.length === 0 || notes.includes(undefined))
    return failure('A place of the diagram can’t be read.');
  const known = notes.flatMap((note) => note ?? []);
  const highest = Math.max(...known.map((note) => note.place.fret));
  const instrument = at.isOwn ? at.instrument : reaching(at.instrument, highest);
  const shown = { ...chord.value, instrument };
  const read = at.show({ ...shown, notes: known, rootPlace: rootUnder(at) });
  if (read.ok || first === 1) return read;
  // Some programs count the frets of a diagram from its first line.
  const moved = known.map((note) => ({ ...note, place: raised(note.place, first - 1) }));
  const again = at.show({ ...shown, notes: moved });
  return again.ok ? again : read;
}

function raised({ string, fret }: Place, frets: number): Place {
  return place(string, fret === 0 ? 0 : fret + frets);
}

/** The string and fret that a note under the chord says; of a chord's notes the first. */
function rootUnder({ notes, instrument }: Spot): Place | undefined {
  for (const note of notes) {
    const technical = childOf(note, 'notations', 'technical');
    const spot = placeOf(childOf(technical, 'string'), childOf(technical, 'fret'));
    if (spot && isOnNeck(instrument, spot)) return spot;
  }
  return undefined;
}

/** The chord's name without its frets. A second chord over the first, as in functional harmony, is not read. */
function chordOf(harmony: XmlElement): Result<NamedChord, string> {
  if (childrenOf(harmony, 'kind').length > 1) return failure('Two chords stand in one symbol.');
  const kind = childOf(harmony, 'kind')?.text.trim() ?? '';
  if (kind === 'none') return failure('It says that there is no chord.');
  const root = noteOf(childOf(harmony, 'root'), 'root');
  if (!root) return failure('The chord has no root that can be read.');
  const degrees = childrenOf(harmony, 'degree').map((degree) => ({
    type: childOf(degree, 'degree-type')?.text.trim() ?? '',
    value: wholeNumber(childOf(degree, 'degree-value')) ?? NaN,
    alter: wholeNumber(childOf(degree, 'degree-alter')) ?? 0,
  }));
  const quality = qualityOf(kind, degrees);
  if (!quality)
    return failure(
      `The kind of chord is not known here: “${plainText(kind).slice(0, 40)}”${degrees.length > 0 ? ' with changes' : ''}.`,
    );
  const hasBass = childOf(harmony, 'bass');
  const bass = hasBass && noteOf(hasBass, 'bass');
  if (hasBass && !bass) return failure('The bass can’t be read.');
  return success({ root, quality, ...(bass && { bass }) });
}

function noteOf(parent: XmlElement | undefined, name: 'root' | 'bass'): NoteName | undefined {
  const step = childOf(parent, `${name}-step`)?.text.trim();
  const letter = letters.find((one) => one === step);
  const alteration = wholeNumber(childOf(parent, `${name}-alter`)) ?? 0;
  return letter && Math.abs(alteration) <= 2 ? { letter, alteration: alteration as Alteration } : undefined;
}

function frameNoteOf(note: XmlElement): ShownNote | undefined {
  const spot = placeOf(childOf(note, 'string'), childOf(note, 'fret'));
  const finger = wholeNumber(childOf(note, 'fingering'));
  const isFinger = finger !== undefined && finger >= 1 && finger <= 4;
  return spot && { place: spot, finger: isFinger ? finger : undefined };
}

function placeOf(string: XmlElement | undefined, fret: XmlElement | undefined): Place | undefined {
  const [number, at] = [wholeNumber(string), wholeNumber(fret)];
  return number === undefined || at === undefined || number < 1 || at < 0 ? undefined : place(number, at);
}

function titleOf(score: XmlElement): string {
  const said = childOf(score, 'work', 'work-title') ?? childOf(score, 'movement-title');
  return plainText(said?.text.slice(0, 1000) ?? '');
}
