import { failure, success, type Result } from '../../../shared/lib/result.ts';
import type { ChartsView } from '../../../shared/protocol/views.ts';

/** The class in the page's address: /charts/ID. */
export function classInAddress(path: string): string {
  return /^\/charts\/([\w-]{1,64})\/?$/.exec(path)?.[1] ?? '';
}

/** What the link leads to, or a sentence on why it doesn't. */
export async function loadCharts(classId: string): Promise<Result<ChartsView, string>> {
  try {
    const response = await fetch(`/api/charts/${classId}`);
    // The server's own replies have these shapes.
    const reply = (await response.json()) as {
      readonly charts?: ChartsView;
      readonly error?: { readonly message: string };
    };
    return reply.charts ? success(reply.charts) : failure(reply.error?.message ?? noAnswer);
  } catch {
    return failure(noAnswer);
  }
}

const noAnswer = 'The server does not answer. Look at the network, then load this page again.';
