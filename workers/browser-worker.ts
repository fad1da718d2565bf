/** The packer as a worker of the page. */
import { exposePacker } from './door.ts';
import { Packer } from './packer.ts';

exposePacker(new Packer());
