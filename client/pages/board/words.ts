import type { NameExercise } from '../../../shared/exercise/exercise.ts';
import { levelName, type Level } from '../../../shared/exercise/levels.ts';
import { namedText, rightName } from '../../../shared/exercise/name-words.ts';
import { capital, placeText } from '../../../shared/exercise/phrases.ts';
import { formatName, type NoteNaming } from '../../../shared/theory/naming.ts';
import type { BoardStage, BoardView, RevealView, Share, TaskView } from '../../../shared/protocol/views.ts';
import { assertNever } from '../../../shared/lib/assert.ts';

/** What the Board says, apart from how it looks. */

export type RoundStageView = Extract<BoardStage, { kind: 'open' | 'held' }>;
export type RevealedStageView = Extract<BoardStage, { kind: 'revealed' }>;

/** A class code in its two groups: `codeGroups('BCDFGH')` is `['BCD', 'FGH']`. */
export function codeGroups(code: string): readonly [string, string] {
  return [code.slice(0, 3), code.slice(3)];
}

/**
 * The address as a student types it. A phone finds https by itself unless the address names a port,
 * so the scheme stays only there.
 */
export function typedAddress(address: string): string {
  const bare = address.replace(/\/+$/, '');
  return /^https:\/\/.*:\d+$/.test(bare) ? bare : bare.replace(/^https?:\/\//, '');
}

/** Where the QR picture leads: the Stand, with the code filled in. */
export function joinLink(address: string, code: string): string {
  return `${address.replace(/\/+$/, '')}/join/${code}`;
}

/** What somebody typed as a code: letters only, as capitals. */
export function readCode(text: string): string {
  return text.replace(/[^a-z]/gi, '').toUpperCase();
}

/** The code in a path such as `/board/BCDFGH`; empty on `/board`. */
export function codeInPath(path: string): string {
  return readCode(/^\/board\/([^/]+)/.exec(path)?.[1] ?? '');
}

/** Whole per cent; 0 where nobody answered. */
export function percent({ right, of }: Share): number {
  return of === 0 ? 0 : Math.round((100 * right) / of);
}

function counted(count: number, one: string): string {
  return `${String(count)} ${one}${count === 1 ? '' : 's'}`;
}

/** `timeInWords(90)` is "1 minute 30 seconds". */
export function timeInWords(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  const rest = seconds % 60;
  if (minutes === 0) return counted(rest, 'second');
  return rest === 0 ? counted(minutes, 'minute') : `${counted(minutes, 'minute')} ${counted(rest, 'second')}`;
}

/** How many came in, or are done: "9 are in", "1 is done". */
export function isOrAre(count: number): string {
  return count === 1 ? 'is' : 'are';
}

/**
 * Where the root (of *find*: the note) lies, if that is short enough to read: "Root on string 2, fret 5.",
 * "String 2, fret 1 or fret 13."; of a place that was to be named its name: "String 3, fret 8: E♭."
 */
export function placeLine({ exercise, notes }: RevealView, naming: NoteNaming): string | null {
  if (exercise.kind === 'name')
    return `${capital(placeText(exercise.place))}: ${nameLine(exercise, naming)}.`;
  const roots = notes.filter(({ degree }) => degree === '1');
  const onString = roots.filter(({ place }) => place.string === exercise.rootString);
  if (exercise.kind === 'find' && onString.length < roots.length) return null;
  const frets = onString.map(({ place }) => (place.fret === 0 ? 'open' : `fret ${String(place.fret)}`));
  if (frets.length === 0 || frets.length > 2) return null;
  const where = `${String(exercise.rootString)}, ${frets.join(' or ')}.`;
  return exercise.kind === 'find' ? `String ${where}` : `Root on string ${where}`;
}

/** "E♭", "minor third above C", "♭3 of C". */
function nameLine(exercise: NameExercise, naming: NoteNaming): string {
  const name = namedText(rightName(exercise), exercise.wanted, naming);
  const root = formatName(exercise.root, naming);
  switch (exercise.wanted) {
    case 'note':
      return name;
    case 'interval':
      return `${name} above ${root}`;
    case 'degree':
      return `${name} of ${root}`;
  }
}

/** How long a text is, in steps that the styles set smaller and smaller. */
export function lengthStep(text: string, steps: readonly number[]): string {
  return `long-${String(steps.filter((step) => text.length > step).length)}`;
}

/** The stage in one sentence, for whoever hears the Board instead of seeing it. Counts are left out: they keep changing. */
export function announcement({ stage, naming }: BoardView): string {
  switch (stage.kind) {
    case 'waiting':
      return 'Come in with address and code.';
    case 'show':
      return stage.show.kind === 'chart'
        ? `Shown: ${stage.show.wording[naming].title}`
        : 'Shown: places on the neck.';
    case 'open':
      return `Asked: ${tasksOf(stage)
        .map(
          ([level, { wording }]) =>
            `${level === null ? '' : `${level}: `}${wording[naming].title}. ${wording[naming].detail}`,
        )
        .join(' ')}`;
    case 'held':
      return 'Held.';
    case 'revealed':
      return `Revealed: ${stage.task.wording[naming].title}. ${foundIt(stage)}`;
    case 'score':
      return 'The class against its last time.';
    case 'over':
      return 'The class is over.';
    default:
      return assertNever(stage);
  }
}

/** "7 of 12 found it."; with levels "First 7 of 12, Second 3 of 4 found it." */
export function foundIt(stage: RevealedStageView): string {
  const shares = sharesOf(stage);
  if (shares.length === 0) return 'Nobody has answered.';
  const found = shares.map(
    ([level, { right, of }]) => `${level === null ? '' : `${level} `}${String(right)} of ${String(of)}`,
  );
  return `${found.join(', ')} found it.`;
}

/** What was found of each level that somebody answered. */
export function sharesOf({ share, harder }: RevealedStageView): readonly AtLevel<Share>[] {
  const shares = named([share, ...harder.map((level) => level.share)]);
  return shares.filter(([, { of }]) => of > 0);
}

/** What each level asks. */
export function tasksOf({ task, harder }: RoundStageView): readonly AtLevel<TaskView>[] {
  return named([task, ...harder]);
}

/** Of each level something, with the level's name where there are several. */
export type AtLevel<Item> = readonly [level: string | null, item: Item];

function named<Item>(items: readonly Item[]): readonly AtLevel<Item>[] {
  return items.map((item, index) => [items.length > 1 ? levelName((index + 1) as Level) : null, item]);
}
