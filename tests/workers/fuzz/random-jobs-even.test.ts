/** The other half of the random jobs of every feature: every-feature.ts says what is asked of them. */
import { testRandomJobs } from './every-feature.ts';

testRandomJobs(Array.from({ length: 30 }, (_, i) => 2 * i + 2));
