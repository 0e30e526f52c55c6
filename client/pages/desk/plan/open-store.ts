import { success } from '../../../../shared/lib/result.ts';
import { api, type Plan } from '../api.ts';
import { PlanStore } from './store.ts';

/** A plan to edit, saved on the server; leaving the page with something unsaved is warned of. */
export function openStore(plan: Plan, changed: () => void): PlanStore {
  const warn = (event: Event) => event.preventDefault();
  const store = new PlanStore(
    plan,
    {
      read: async () => {
        const reply = await api.plan(plan.id);
        return reply.ok ? success(reply.value.plan) : reply;
      },
      write: (content) => api.changePlan(plan.id, content),
      later: (wait, act) => {
        const timer = setTimeout(act, wait);
        return () => clearTimeout(timer);
      },
    },
    () => {
      // The page may be left within the Desk: saving goes on, and so does the warning.
      if (store.saving === 'saved' || store.saving === 'gone') removeEventListener('beforeunload', warn);
      else addEventListener('beforeunload', warn);
      changed();
    },
  );
  return store;
}
