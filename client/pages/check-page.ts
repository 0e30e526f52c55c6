import './check/check.ts';
