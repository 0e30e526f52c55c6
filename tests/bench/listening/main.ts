import { at } from '../live/figures.ts';
import { conditions } from '../../support/sound/rooms.ts';
import { besideAnother, chordFigures, type ChordFigures, type Share } from './chords.ts';
import { load, sizes } from './cost.ts';
import { muted, talk, type Taken } from './not-music.ts';
import { ringingNotes, singleNotes, type NoteFigures } from './notes.ts';
import { listeningTable, type Cell, type Line } from './table.ts';

/**
 * `npm run bench listening [notes] [chords] [talk] [cost] [quick] [wrong]`: everything, or these parts; `quick` is for in
 * between, `wrong` names what was heard otherwise than played.
 */
const words = process.argv.slice(2);
const isQuick = words.includes('quick');
const parts = ['notes', 'chords', 'talk', 'cost'].filter((part) => words.includes(part));
const wants = (part: string) => parts.length === 0 || parts.includes(part);
const show = (some: readonly string[]) => {
  if (words.includes('wrong')) process.stdout.write(`${some.join('\n')}\n`);
};

process.stdout.write(
  'Held out from training: the guitars acoustic, electric and nylon (npm tonejs-instrument-guitar-*-mp3), speech by espeak-ng.\n' +
    'Thresholds of the ear around the net (onsets, single notes, speech) were set by looking at the same sound.\n\n',
);
const heads = ['', ...conditions];
const tables: string[] = [];
if (wants('notes')) tables.push(listeningTable(heads, await noteLines()));
if (wants('chords')) tables.push(listeningTable(heads, await chordLines()));
if (wants('talk')) tables.push(listeningTable(['', 'notes a minute', 'chords a minute'], await talkLines()));
if (wants('cost')) tables.push(listeningTable(['', ''], await costLines()));
process.stdout.write(`${tables.join('\n\n')}\n`);

async function noteLines(): Promise<Line[]> {
  const single: NoteFigures[] = [];
  const after: NoteFigures[] = [];
  const ringing: NoteFigures[] = [];
  for (const condition of conditions) {
    single.push(await singleNotes(condition, isQuick ? 1 : 8));
    after.push(await ringingNotes(condition, isQuick ? 1 : 12, 0));
    ringing.push(await ringingNotes(condition, isQuick ? 1 : 12, 0.5));
  }
  show([...single, ...after, ...ringing].flatMap(({ wrong }) => wrong));
  const wrongBy = (value: (one: NoteFigures) => number, goal?: number) =>
    single.map((one, column) => share(value(one), one.played, column < 2 ? goal : undefined));
  const time = (from: readonly NoteFigures[], which: number, goal?: number) =>
    from.map(({ times }, column) => ({
      value: 1000 * at(which, times),
      unit: ' ms',
      ...(goal === undefined || column > 1 ? {} : { goal }),
    }));
  const rightOf = (from: readonly NoteFigures[], goals: readonly number[]) =>
    from.map((one, column) => share(one.right, one.played, goals[column], true));
  return [
    { measure: 'single note, right accepted', cells: rightOf(single, [99, 98]) },
    { measure: 'octave or semitone wrong accepted', cells: wrongBy((one) => one.octave + one.semitone, 0.2) },
    { measure: 'another note, or one too many', cells: wrongBy((one) => one.other) },
    { measure: 'verdict after the onset, median', cells: time(single, 0.5, 115) },
    { measure: 'verdict, 95 of 100', cells: time(single, 0.95, 185) },
    { measure: 'eighths at 120, each stopped by the next, heard', cells: rightOf(after, []) },
    { measure: 'eighths at 120 ringing 0.5 s into the next two, heard', cells: rightOf(ringing, [99]) },
    {
      measure: 'wrong or too many among those',
      cells: ringing.map((one) => share(one.octave + one.semitone + one.other, one.played)),
    },
    { measure: 'their verdict, median', cells: time(ringing, 0.5) },
  ];
}

async function chordLines(): Promise<Line[]> {
  const all: ChordFigures[] = [];
  for (const condition of conditions) all.push(await chordFigures(condition, isQuick ? 40 : 300, true));
  const beside = await besideAnother(isQuick ? 40 : 300);
  show(all.flatMap(({ wrong }) => wrong));
  const cells = (
    value: (one: ChordFigures) => Share,
    goals: readonly (number | undefined)[],
    atLeast = false,
  ) => all.map((one, column) => share(value(one).hits, value(one).of, goals[column], atLeast));
  const time = (value: (one: ChordFigures) => readonly number[], which: number, goal?: number) =>
    all.map((one) => ({
      value: 1000 * at(which, value(one)),
      unit: ' ms',
      ...(goal === undefined ? {} : { goal }),
    }));
  return [
    { measure: 'chord, right accepted', cells: cells((one) => one.right, [99, 98, 96], true) },
    {
      measure: 'other quality on the same root accepted, of all',
      cells: cells((one) => one.otherQuality, [0.3, 0.5, 0.9]),
    },
    { measure: 'the same, of those one tone away', cells: cells((one) => one.nearQuality, []) },
    { measure: 'missing third accepted', cells: cells((one) => one.noThird, [1]) },
    { measure: 'one string a fret off accepted', cells: cells((one) => one.fretOff, [5]) },
    { measure: 'tone blamed truly at fault', cells: cells((one) => one.blamed, [99], true) },
    { measure: 'arpeggio, right accepted', cells: cells((one) => one.arpeggio, []) },
    { measure: 'hint after the first string, median', cells: time((one) => one.hints, 0.5) },
    { measure: 'verdict, median', cells: time((one) => one.verdicts, 0.5) },
    { measure: 'verdict, 95 of 100', cells: time((one) => one.verdicts, 0.95) },
    {
      measure: 'beside a guitar with another chord, 12 dB softer',
      cells: [{ value: NaN, unit: '' }, share(beside.hits, beside.of)],
    },
  ];
}

async function talkLines(): Promise<Line[]> {
  const rate = (taken: Taken, notes?: number, chords?: number): readonly Cell[] => [
    {
      value: taken.notes / taken.minutes,
      unit: '',
      of: `${String(taken.notes)} in ${taken.minutes.toFixed(1)} min`,
      ...(notes === undefined ? {} : { goal: notes }),
    },
    {
      value: taken.chords / taken.minutes,
      unit: '',
      of: String(taken.chords),
      ...(chords === undefined ? {} : { goal: chords }),
    },
  ];
  return [
    { measure: 'speech taken for music', cells: rate(await talk(isQuick ? 2 : 10), 0.25, 0.35) },
    { measure: 'muted strings taken for music', cells: rate(await muted(isQuick ? 10 : 60)) },
  ];
}

async function costLines(): Promise<Line[]> {
  const { line, chord, spectrum, pitch } = await load();
  const { code, weights } = await sizes();
  const percent = (value: number, goal?: number): readonly Cell[] => [
    { value: 100 * value, unit: ' %', ...(goal === undefined ? {} : { goal }) },
  ];
  return [
    { measure: 'one core, listening for notes', cells: percent(line, 4) },
    { measure: 'one core, listening for chords', cells: percent(chord, 4) },
    { measure: 'a spectrum of 1024 each 256 samples, alone', cells: percent(spectrum) },
    { measure: 'a pitch of 2048 each 256 samples, alone', cells: percent(pitch) },
    { measure: 'notes ÷ both of them', cells: [{ value: line / (spectrum + pitch), unit: '' }] },
    { measure: 'chords ÷ the spectrum', cells: [{ value: chord / spectrum, unit: '' }] },
    {
      measure: 'code and weights, compressed',
      cells: [
        { value: code + weights, unit: ' kB', of: `${code.toFixed(1)} + ${weights.toFixed(1)}`, goal: 120 },
      ],
    },
  ];
}

function share(hits: number, of: number, goal?: number, atLeast = false): Cell {
  return {
    value: (100 * hits) / of,
    unit: ' %',
    of: `${String(hits)}/${String(of)}`,
    atLeast,
    ...(goal === undefined ? {} : { goal }),
  };
}
