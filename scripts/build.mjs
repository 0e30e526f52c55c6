import { build, checkNode, install } from './lib/project.mjs';

checkNode();
install();
build();
