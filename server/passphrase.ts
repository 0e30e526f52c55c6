import { createInterface } from 'node:readline/promises';
import { Writable } from 'node:stream';
import { parseArgs } from 'node:util';
import { loadConfig, storePath } from './config.ts';
import { hashPassphrase, passphraseProblem } from './passphrases.ts';
import { openStore } from './store/sqlite/open-store.ts';
import type { Teacher, TeacherStore } from './store/store.ts';

interface Questions {
  ask(question: string): Promise<string>;
  /** Without showing what is typed. */
  askHidden(question: string): Promise<string>;
  end(): void;
}

/**
 * `npm run passphrase`: gives a teacher a new passphrase and ends all of the teacher's sessions. On a terminal it
 * asks; elsewhere it takes `--name` and reads the passphrase from the first line of its input.
 */
async function main(): Promise<void> {
  const { values } = parseArgs({ options: { name: { type: 'string' } } });
  const config = loadConfig();
  if (!config.ok) throw new Error(config.error);
  const store = openStore({ path: storePath(config.value) });
  const questions = process.stdin.isTTY ? askingTerminal() : undefined;
  try {
    const teacher = await chooseTeacher(store.teachers, values.name, questions);
    const passphrase = questions ? await askTwice(teacher, questions) : await firstLine();
    const problem = passphraseProblem(passphrase);
    if (problem) throw new Error(problem);
    await store.teachers.setPassphrase(teacher.id, await hashPassphrase(passphrase));
    process.stdout.write(`${teacher.name} has a new passphrase and is signed out everywhere.\n`);
  } finally {
    questions?.end();
    await store.close();
  }
}

async function chooseTeacher(
  teachers: TeacherStore,
  given: string | undefined,
  questions: Questions | undefined,
): Promise<Teacher> {
  const all = await teachers.list();
  const [first, ...others] = all;
  if (!first)
    throw new Error('There is no teacher yet. Start Rootcall and open the set-up link that it prints.');
  if (given === undefined && others.length === 0) return first;
  const names = `Teachers: ${all.map(({ name }) => name).join(', ')}.`;
  if (given === undefined && !questions) throw new Error(`Say whose passphrase: --name NAME. ${names}`);
  const name = given ?? (await questions?.ask(`${names}\nWhose passphrase? `)) ?? '';
  const teacher = await teachers.byName(name);
  if (!teacher) throw new Error(`No teacher has this name. ${names}`);
  return teacher;
}

async function askTwice(teacher: Teacher, questions: Questions): Promise<string> {
  const passphrase = await questions.askHidden(`New passphrase for ${teacher.name}: `);
  const problem = passphraseProblem(passphrase);
  if (problem) throw new Error(problem);
  if ((await questions.askHidden('Once more: ')) === passphrase) return passphrase;
  throw new Error('The two are not the same. Nothing was changed.');
}

async function firstLine(): Promise<string> {
  for await (const line of createInterface({ input: process.stdin })) return line;
  return '';
}

function askingTerminal(): Questions {
  let hidden = false;
  const output = new Writable({
    write(chunk: Buffer, _encoding, done) {
      if (!hidden) process.stdout.write(chunk);
      done();
    },
  });
  const terminal = createInterface({ input: process.stdin, output, terminal: true });
  const giveUp = () => {
    process.stdout.write('\nNothing was changed.\n');
    process.exit(130);
  };
  terminal.once('close', giveUp);
  return {
    ask: (question) => terminal.question(question),
    async askHidden(question) {
      process.stdout.write(question);
      hidden = true;
      const answer = await terminal.question('');
      hidden = false;
      process.stdout.write('\n');
      return answer;
    },
    end() {
      terminal.off('close', giveUp);
      terminal.close();
    },
  };
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = 1;
});
