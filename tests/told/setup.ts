import { noteTold } from './told.ts';

noteTold();
