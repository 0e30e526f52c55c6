import type { Finding } from './answering-class.ts';

/** What a torture found, in a sentence for the README. */
export interface Report {
  readonly ok: boolean;
  readonly text: string;
}

export function sum(findings: readonly Finding[]): Finding {
  const of = (key: keyof Finding) => findings.reduce((total, finding) => total + finding[key], 0);
  return { lost: of('lost'), wrong: of('wrong'), acknowledged: of('acknowledged'), resent: of('resent') };
}
