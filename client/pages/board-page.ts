import './board/board.ts';
