/** The files of what was dropped: those of a dropped folder, its own folders left out, and single ones. */

/** A folder hands out its entries a few at a time, until it hands out none. */
async function inside(folder: FileSystemDirectoryEntry): Promise<FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (some.length === 0) return all;
    all.push(...some);
  }
}

const fileOf = (entry: FileSystemEntry) =>
  new Promise<File>((resolve, reject) => (entry as FileSystemFileEntry).file(resolve, reject));

/** Must be called while the drop is handled: afterwards the browser hands out nothing. */
export async function filesDropped({ items, files }: DataTransfer): Promise<File[]> {
  const loose = [...files];
  const entries = [...items].flatMap((item) => item.webkitGetAsEntry?.() ?? []);
  if (!entries.some(({ isDirectory }) => isDirectory)) return loose;
  const all = await Promise.all(
    entries.map((entry) => (entry.isDirectory ? inside(entry as FileSystemDirectoryEntry) : [entry])),
  );
  return Promise.all(
    all
      .flat()
      .filter(({ isFile }) => isFile)
      .map(fileOf),
  );
}
