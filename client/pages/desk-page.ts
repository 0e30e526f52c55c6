import './desk/shell.ts';
