import { LATER_WORDS } from './laterWords'
import { addWords } from './spoken'

// For whatever starts with all words at hand: the command line and the tests.
addWords(LATER_WORDS)
