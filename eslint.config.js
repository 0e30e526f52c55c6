import globals from 'globals';
import tseslint from 'typescript-eslint';

/**
 * The rooms of the house and what each must not import (DEVELOPERS.md, "Who may import whom").
 * Each is a regular expression held against the import as written.
 */
const packages = '^[a-z@]';
const rooms = [
  { room: 'shared/lib', never: [packages, '/(theory|exercise|plans|protocol)/'] },
  { room: 'shared/theory', never: [packages, '/(exercise|plans|protocol)/'] },
  { room: 'shared/exercise', never: [packages, '/(protocol|plans)/'] },
  { room: 'shared/plans', never: [packages, '/protocol/'] },
  { room: 'shared/protocol', never: ['^(?!valibot$)[a-z@]'] },
  { room: 'server/classroom', never: [packages, '/(live|store|sockets|routes)/'] },
  {
    room: 'server/live',
    never: ['^(express|socket.io|kysely|better-sqlite3)', '/(sockets|routes)/', '/store/(?!store\\.ts)'],
  },
  { room: 'server/sockets', never: ['^(express|kysely|better-sqlite3)', '/(store|classroom|routes)/'] },
  {
    room: 'server/routes',
    never: ['^(socket.io|kysely|better-sqlite3)', '/(classroom|sockets)/', '/store/(?!store\\.ts)'],
  },
  { room: 'server/store', never: ['^(express|socket.io)', '/(live|sockets|routes)/'] },
  { room: 'client/fretboard', never: ['^socket.io', '/(connection|pages)/'] },
  { room: 'client/components', never: ['^socket.io', '/(connection|pages)/'] },
  { room: 'client/charts', never: ['^socket.io', '/(connection|pages)/'] },
  { room: 'client/exchange', never: ['^socket.io', '/(connection|pages)/'] },
  { room: 'client/listening', never: ['^lit', '^socket.io', '/(connection|pages|components|fretboard)/'] },
  { room: 'client/midi', never: ['^lit', '^socket.io', '/(connection|pages|components|fretboard)/'] },
  { room: 'client/connection', never: ['/(pages|components)/'] },
];

const pure = ['shared/**/*.ts', 'server/classroom/**/*.ts'];

export default tseslint.config(
  { ignores: ['dist/', 'data/', 'node_modules/', 'test-results/', 'playwright-report/'] },
  ...tseslint.configs.strict,
  {
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-restricted-syntax': [
        'error',
        { selector: 'TSEnumDeclaration', message: 'Use a union of string literals.' },
        { selector: 'ExportAllDeclaration', message: 'No barrels.' },
        { selector: 'ExportDefaultDeclaration', message: 'Named exports only.' },
      ],
      eqeqeq: 'error',
    },
  },
  {
    files: pure,
    rules: {
      'no-restricted-globals': ['error', 'crypto', 'performance', 'setTimeout', 'setInterval', 'fetch'],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Randomness arrives as an argument.' },
        { object: 'Date', property: 'now', message: 'Time arrives as an argument.' },
      ],
      'no-restricted-syntax': [
        'error',
        { selector: "NewExpression[callee.name='Date']", message: 'Time arrives as an argument.' },
        { selector: 'TSEnumDeclaration', message: 'Use a union of string literals.' },
        { selector: 'ExportAllDeclaration', message: 'No barrels.' },
      ],
    },
  },
  ...rooms.map(({ room, never }) => ({
    files: [`${room}/**/*.ts`],
    rules: { 'no-restricted-imports': ['error', { patterns: never.map((regex) => ({ regex })) }] },
  })),
  {
    files: ['scripts/**/*.mjs', '*.config.{js,ts}'],
    languageOptions: { globals: globals.node },
    rules: { 'no-restricted-syntax': 'off' },
  },
  { files: ['server/**/*.ts'], rules: { 'no-console': 'error' } },
  {
    files: ['server/**/*.ts', 'client/**/*.ts', 'tests/**/*.ts'],
    ignores: ['server/config.ts'],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'process', property: 'env', message: 'Only server/config.ts reads the environment.' },
      ],
    },
  },
);
