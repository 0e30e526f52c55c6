import type { Answer } from '../../../shared/exercise/answer.ts';
import type { Exercise } from '../../../shared/exercise/exercise.ts';
import { failure, success, type Result } from '../../../shared/lib/result.ts';
import { errorReply, errorSentences, type ErrorReply } from '../../../shared/protocol/errors.ts';
import type { PlanContent } from '../../../shared/plans/plan.ts';
import type { Share } from '../../../shared/protocol/views.ts';
import type { NoteNaming } from '../../../shared/theory/naming.ts';
import { planned } from './planned.ts';

/** The server's resources as the Desk reads them. Times are milliseconds, UTC. */
export interface Me {
  readonly teacher: { readonly id: string; readonly name: string } | null;
  readonly needsSetUp: boolean;
}

export interface GroupSettings {
  readonly name: string;
  readonly school: string;
  readonly instrument: string;
  readonly naming: NoteNaming;
  readonly language: string;
  /** When everything of the group is deleted; null: never by itself. */
  readonly purgeAt: number | null;
}

export interface Group extends GroupSettings {
  readonly id: string;
  readonly openClass: { readonly id: string; readonly code: string } | null;
}

export interface Student {
  readonly id: string;
  readonly name: string;
  readonly seatNumber: number | null;
  readonly alias: string | null;
  readonly team: string | null;
  readonly moreTime: number;
}

export interface Plan extends PlanContent {
  readonly id: string;
  /** Grows with each save, at whichever Desk. */
  readonly revision: number;
}

/** What one student gave on paper to one exercise of a plan. */
export interface PaperAnswer extends Answer {
  readonly exerciseId: string;
}

export interface PaperResult {
  readonly studentId: string;
  readonly answers: readonly PaperAnswer[];
}

export interface PastClass {
  readonly id: string;
  readonly openedAt: number;
  readonly closedAt: number | null;
  readonly rounds: number;
  readonly share: Share;
}

export interface GroupDetail {
  readonly group: Group;
  readonly students: readonly Student[];
  readonly plans: readonly Plan[];
  readonly classes: readonly PastClass[];
}

export interface Addresses {
  readonly addresses: readonly string[];
  readonly chosen: string;
}

export type Answered<T> = Promise<Result<T, ErrorReply>>;
type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

async function send<T>(method: Method, path: string, body?: object): Answered<T> {
  try {
    const response = await fetch(`/api/${path}`, {
      method,
      credentials: 'same-origin',
      ...(body ? { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) } : {}),
    });
    const text = await response.text();
    const reply: unknown = text === '' ? {} : JSON.parse(text);
    // The server's own replies have the shapes above; only a refusal is looked at before it is trusted.
    return response.ok ? success(reply as T) : failure(refusalIn(reply));
  } catch {
    return failure(
      errorReply('server-failed', 'The server does not answer. Look at the network, then try again.'),
    );
  }
}

function refusalIn(reply: unknown): ErrorReply {
  const error = typeof reply === 'object' && reply !== null && 'error' in reply ? reply.error : null;
  if (typeof error !== 'object' || error === null || !('code' in error)) return errorReply('server-failed');
  const code = Object.keys(errorSentences).find((known) => known === error.code) as
    ErrorReply['code'] | undefined;
  if (!code) return errorReply('server-failed');
  return 'message' in error && typeof error.message === 'string'
    ? errorReply(code, error.message)
    : errorReply(code);
}

type Id = { readonly id: string };
const none = {};

export const api = {
  me: () => send<Me>('GET', 'me'),
  setUp: (fields: { token: string; name: string; passphrase: string }) =>
    send<object>('POST', 'set-up', fields),
  signIn: (fields: { name: string; passphrase: string }) => send<object>('POST', 'sign-in', fields),
  signOut: () => send<object>('POST', 'sign-out', none),
  signOutEverywhere: () => send<object>('POST', 'sign-out-everywhere', none),
  invite: () => send<{ readonly link: string }>('POST', 'invitations', none),

  groups: () => send<{ readonly groups: readonly Group[] }>('GET', 'groups'),
  addGroup: (fields: GroupSettings) => send<Id>('POST', 'groups', fields),
  group: (id: string) => send<GroupDetail>('GET', `groups/${id}`),
  changeGroup: (id: string, fields: Partial<GroupSettings>) => send<object>('PATCH', `groups/${id}`, fields),
  removeGroup: (id: string) => send<object>('DELETE', `groups/${id}`),

  addStudents: (groupId: string, names: readonly string[]) =>
    send<object>('POST', `groups/${groupId}/students`, { names }),
  /** Rows of a table, all of them or none. */
  importStudents: (groupId: string, students: readonly Omit<Student, 'id' | 'alias'>[]) =>
    send<object>('POST', `groups/${groupId}/students`, { students }),
  changeStudent: (id: string, fields: Partial<Omit<Student, 'id' | 'alias'>>) =>
    send<object>('PATCH', `students/${id}`, fields),
  /** The first leaves the register; answers and seats go to the other. */
  mergeStudents: (id: string, into: string) => send<object>('POST', `students/${id}/merge`, { into }),
  removeStudent: (id: string) => send<object>('DELETE', `students/${id}`),

  plan: (id: string) => send<{ readonly plan: Plan & { readonly groupId: string } }>('GET', `plans/${id}`),
  addPlan: (groupId: string, plan: PlanContent) => send<Id>('POST', `groups/${groupId}/plans`, plan),
  changePlan: (id: string, plan: PlanContent & Pick<Plan, 'revision'>) =>
    send<Pick<Plan, 'revision'>>('PUT', `plans/${id}`, plan),
  removePlan: (id: string) => send<object>('DELETE', `plans/${id}`),

  /** Becomes a class that is over, once for its id; `before`: at an earlier try. */
  addPaper: (
    planId: string,
    paper: { id: string; revision: number; at: number; results: readonly PaperResult[] },
  ) => send<Id & { readonly before: boolean }>('POST', `plans/${planId}/paper`, paper),

  openClass: (groupId: string, planId: string | null) =>
    send<Id>('POST', `groups/${groupId}/classes`, { planId }),

  addresses: () => send<Addresses>('GET', 'addresses'),
  chooseAddress: (chosen: string) => send<object>('PUT', 'addresses', { chosen }),
};

/** Adds exercises at the end of the plan as the server has it now: where a class stands in it stays the same. */
export async function addToPlan(planId: string, exercises: readonly Exercise[]): Answered<object> {
  const found = await api.plan(planId);
  if (!found.ok) return found;
  const { title, aim, points, revision, exercises: before } = found.value.plan;
  const part = before.at(-1)?.part ?? 'new';
  const added = exercises.map((exercise) => planned(exercise, { part }));
  const reply = await api.changePlan(planId, {
    title,
    aim,
    points,
    revision,
    exercises: [...before, ...added],
  });
  // Another Desk came first: what it saved stays, and this is added to it.
  return !reply.ok && reply.error.code === 'plan-changed' ? addToPlan(planId, exercises) : reply;
}

/** The plan's group, with all of it. */
export async function groupOfPlan(planId: string): Answered<GroupDetail> {
  const plan = await api.plan(planId);
  return plan.ok ? api.group(plan.value.plan.groupId) : plan;
}
