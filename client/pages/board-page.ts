import '../styles/base.css';
import './board/board.css';
import './board/board.ts';
