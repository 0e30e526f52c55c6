import { describe, expect, test } from 'vitest';
import { classPath, groupPath, planPath, routeOf } from '../../../client/pages/desk/routes.ts';

describe('where at the Desk', () => {
  test.each([
    ['/desk', { kind: 'home' }],
    ['/desk/', { kind: 'home' }],
    ['/desk/set-up', { kind: 'set-up' }],
    [groupPath('a1-_'), { kind: 'group', id: 'a1-_' }],
    [planPath('b2'), { kind: 'plan', id: 'b2' }],
    [classPath('c3'), { kind: 'class', id: 'c3' }],
    ['/desk/group', { kind: 'unknown' }],
    ['/desk/group/a/b', { kind: 'unknown' }],
    ['/board/bcdfgh', { kind: 'unknown' }],
  ])('%s', (path, route) => {
    expect(routeOf(path)).toEqual(route);
  });
});
