import './explore/explore.ts';
import { stayOffline } from './explore/offline.ts';

void stayOffline();
