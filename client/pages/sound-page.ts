import './sound/sound.ts';
