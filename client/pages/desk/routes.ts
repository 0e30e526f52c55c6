/** Where at the Desk somebody is, by the page's path. */
export type Route =
  | { readonly kind: 'home' }
  | { readonly kind: 'set-up' }
  | { readonly kind: 'group'; readonly id: string }
  | { readonly kind: 'plan'; readonly id: string }
  | { readonly kind: 'class'; readonly id: string }
  /** Charts and quizzes to print, for a group; `?plan=` names the plan to start from. */
  | { readonly kind: 'handout'; readonly id: string }
  /** Results of a plan's paper quiz, to be typed in. */
  | { readonly kind: 'paper'; readonly id: string }
  | { readonly kind: 'unknown' };

/** `routeOf('/desk/group/ab12')` is the group with the id ab12. */
export function routeOf(path: string): Route {
  const [page, kind, id, ...rest] = path.split('/').filter((part) => part !== '');
  if (page !== 'desk' || rest.length > 0) return { kind: 'unknown' };
  if (kind === undefined) return { kind: 'home' };
  if (kind === 'set-up' && id === undefined) return { kind: 'set-up' };
  if (id !== undefined && isKind(kind)) return { kind, id };
  return { kind: 'unknown' };
}

type KindWithId = Extract<Route, { readonly id: string }>['kind'];

const withId: readonly string[] = [
  'group',
  'plan',
  'class',
  'handout',
  'paper',
] satisfies readonly KindWithId[];

function isKind(kind: string): kind is KindWithId {
  return withId.includes(kind);
}

export const homePath = '/desk';
export function groupPath(id: string): string {
  return `/desk/group/${id}`;
}
export function planPath(id: string): string {
  return `/desk/plan/${id}`;
}
export function classPath(id: string): string {
  return `/desk/class/${id}`;
}
export function handoutPath(groupId: string, planId?: string): string {
  return `/desk/handout/${groupId}${planId === undefined ? '' : `?plan=${planId}`}`;
}
export function paperPath(planId: string): string {
  return `/desk/paper/${planId}`;
}

/** Asks the Desk to show another of its pages, without loading a document. */
export class NavigateEvent extends Event {
  static readonly kind = 'desk-navigate';
  readonly path: string;
  constructor(path: string) {
    super(NavigateEvent.kind, { bubbles: true, composed: true });
    this.path = path;
  }
}
