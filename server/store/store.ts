import type { ClassSettings } from '../../shared/protocol/commands.ts';
import type {
  ClassCode,
  ClassId,
  GroupId,
  PlanId,
  StudentId,
  TeacherId,
  Time,
} from '../../shared/protocol/ids.ts';
import type { Share } from '../../shared/protocol/views.ts';
import type { PlanContent } from '../../shared/plans/plan.ts';
import type { InstrumentId } from '../../shared/theory/fretboard.ts';
import type { NoteNaming } from '../../shared/theory/naming.ts';
import type { Asked, Change, ClassState, Plan, Student } from '../classroom/state.ts';

/** Everything that Rootcall keeps. Names of people are with teachers, students and seats (as typed) only. */
export interface Store {
  readonly teachers: TeacherStore;
  readonly groups: GroupStore;
  readonly plans: PlanStore;
  readonly classes: ClassStore;
  readonly settings: SettingStore;
  describe(): StoreDescription;
  close(): Promise<void>;
}

export interface StoreDescription {
  readonly kind: string;
  readonly schema: number;
}

export interface Teacher {
  readonly id: TeacherId;
  readonly name: string;
}

export interface TeacherStore {
  count(): Promise<number>;
  create(
    teacher: Teacher & { readonly passphraseHash: string; readonly createdAt: Time },
  ): Promise<'created' | 'name-taken'>;
  /** Names are matched without regard to case. */
  byName(name: string): Promise<(Teacher & { readonly passphraseHash: string }) | undefined>;
  list(): Promise<readonly Teacher[]>;
  /** Also ends every session of the teacher. */
  setPassphrase(id: TeacherId, passphraseHash: string): Promise<void>;
  openSession(session: {
    readonly tokenHash: string;
    readonly teacherId: TeacherId;
    readonly expiresAt: Time;
  }): Promise<void>;
  sessionTeacher(tokenHash: string, now: Time): Promise<Teacher | undefined>;
  closeSession(tokenHash: string): Promise<void>;
  /** All of a teacher's. */
  closeSessions(id: TeacherId): Promise<void>;
  /** Deletes sessions and links whose time is over. */
  forgetExpired(now: Time): Promise<void>;
  /** One-time links; kept as hashes. */
  addInvitation(tokenHash: string, expiresAt: Time): Promise<void>;
  /** True once, for a link that is known and not too old; then it is gone. */
  spendInvitation(tokenHash: string, now: Time): Promise<boolean>;
}

/** `address`: under which students reach the server. */
export type SettingKey = 'address';

export interface SettingStore {
  read(key: SettingKey): Promise<string | undefined>;
  write(key: SettingKey, value: string): Promise<void>;
}

export interface GroupFields {
  readonly name: string;
  readonly school: string;
  readonly instrument: InstrumentId;
  readonly naming: NoteNaming;
  /** The reader's language as a BCP 47 tag. */
  readonly language: string;
  /** The group, its students and their answers are deleted from this day on. */
  readonly purgeAt: Time | null;
}

export interface Group extends GroupFields {
  readonly id: GroupId;
  readonly teacherId: TeacherId;
  readonly createdAt: Time;
}

export interface GroupStore {
  create(group: Group): Promise<void>;
  byId(id: GroupId): Promise<Group | undefined>;
  ofTeacher(teacherId: TeacherId): Promise<readonly Group[]>;
  update(id: GroupId, fields: Partial<GroupFields>): Promise<void>;
  /** With its students, plans, classes, rounds and answers. */
  remove(id: GroupId): Promise<void>;
  /** Removes every group whose purge date has come; their ids. */
  purge(now: Time): Promise<readonly GroupId[]>;
  students(id: GroupId): Promise<readonly Student[]>;
  studentGroup(id: StudentId): Promise<GroupId | undefined>;
  saveStudent(groupId: GroupId, student: Student): Promise<void>;
  /**
   * Answers and seats of the one go to the other of the same group, and the first is gone. Where both answered a
   * round, what was counted later stays; where both have a device in a class, the one that came later.
   */
  mergeStudents(from: StudentId, into: StudentId): Promise<void>;
  /** With the student's seats and answers. That a device was sent away stays, without the name. */
  removeStudent(id: StudentId): Promise<void>;
}

export interface StoredPlan extends PlanContent {
  readonly id: PlanId;
  readonly groupId: GroupId;
  /** 1 when it is made, one more with each save. */
  readonly revision: number;
  readonly updatedAt: Time;
}

export interface PlanStore {
  ofGroup(groupId: GroupId): Promise<readonly StoredPlan[]>;
  byId(id: PlanId): Promise<StoredPlan | undefined>;
  /** Creates at revision 1, or replaces the revision before; `changed` where somebody else saved since. */
  save(plan: StoredPlan): Promise<'saved' | 'changed'>;
  remove(id: PlanId): Promise<void>;
}

export interface NewClass {
  readonly id: ClassId;
  readonly groupId: GroupId;
  readonly code: ClassCode;
  readonly openedAt: Time;
  /** Set where the class was held without screens, and is over. */
  readonly closedAt?: Time;
  readonly settings: ClassSettings;
  readonly plan: Plan | null;
}

export interface ClassSummary {
  readonly id: ClassId;
  readonly code: ClassCode;
  readonly openedAt: Time;
  readonly closedAt: Time | null;
  readonly rounds: number;
  /** Over the revealed rounds that were not voided. */
  readonly share: Share;
}

/** What a running class needs: its state, and the promise that what changes in it is kept. */
export interface AnswerStore {
  /** The whole state, as the changes committed so far make it; `lastTime` looks at this group's earlier classes. */
  load(id: ClassId): Promise<ClassState | undefined>;
  /**
   * Resolves once the changes are safe against a power cut. Calls made while a commit runs share the next one;
   * order is kept. All changes of one call are kept, or none.
   */
  commit(id: ClassId, changes: readonly Change[]): Promise<void>;
}

export interface ClassStore extends AnswerStore {
  /** What was asked in a class: all that its charts need, read for everybody who opens them. */
  asked(id: ClassId): Promise<Asked | undefined>;
  create(newClass: NewClass): Promise<'created' | 'code-taken'>;
  /** Classes that have not been closed. */
  open(): Promise<readonly ClassId[]>;
  byCode(code: ClassCode): Promise<ClassId | undefined>;
  bySeatToken(tokenHash: string): Promise<ClassId | undefined>;
  ofGroup(groupId: GroupId): Promise<readonly ClassSummary[]>;
}
