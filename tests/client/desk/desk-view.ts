import type { Exercise } from '../../../shared/exercise/exercise.ts';
import type { DeskRoundView, DeskView } from '../../../shared/protocol/views.ts';
import type { StringNumber } from '../../../shared/theory/fretboard.ts';
import type { Letter } from '../../../shared/theory/pitch.ts';

/** Find a natural note on string 2. */
export function findOn2(letter: Letter): Exercise {
  return {
    kind: 'find',
    instrument: 'guitar',
    root: { letter, alteration: 0 },
    rootString: 2 as StringNumber,
    strictness: 'string',
    range: null,
  };
}

export function round(fields: Partial<DeskRoundView> = {}): DeskRoundView {
  return {
    id: 'round-1' as DeskRoundView['id'],
    number: 1,
    exercise: findOn2('D'),
    harder: [],
    planIndex: null,
    phase: 'open',
    voided: false,
    openedAt: 0 as DeskRoundView['openedAt'],
    deadline: null,
    share: { right: 0, of: 0 },
    shares: [{ right: 0, of: 0 }],
    ...fields,
  };
}

/** A Desk's view of an empty class, but for what a test says. */
export function deskView(fields: Partial<DeskView>): DeskView {
  return {
    classId: 'class' as DeskView['classId'],
    group: 'Thursday Strings',
    groupId: 'group',
    school: 'Alderwick Community Music School',
    code: 'BCDFGH' as DeskView['code'],
    instrument: 'guitar',
    naming: 'english',
    settings: { autoAdmit: false, score: 'class', ranking: false },
    now: 0 as DeskView['now'],
    closed: false,
    boards: 0,
    plan: null,
    cursor: 0,
    stage: 'rest',
    show: null,
    turn: null,
    rounds: [],
    students: [],
    asking: [],
    pattern: null,
    score: { now: { right: 0, of: 0 }, before: null, rows: [], teams: [], ranking: [] },
    ...fields,
  };
}
