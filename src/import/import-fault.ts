/** Why a drawing cannot be read at all: what, where, and what to do, in words for a person. */
export class ImportFault extends Error {
  override readonly name = 'ImportFault';
}
