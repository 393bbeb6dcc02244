/** The store cannot be opened as asked; nothing in it has been touched. Says what is wrong and what mends it. */
export class StoreRefusal extends Error {
  readonly place: string;
  readonly mend: string;
  constructor(place: string, message: string, mend: string) {
    super(message);
    this.name = 'StoreRefusal';
    this.place = place;
    this.mend = mend;
  }
}
