/** A PDF read by an independent reader, pdf.js: pages in millimetres, y up, with their words and drawn paths. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

const MM = 25.4 / 72;

export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly words: readonly {
    readonly text: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    /** Of the letters' body. */
    readonly size: number;
    readonly isTurned: boolean;
  }[];
  /** All words of the page, a space between. */
  readonly text: string;
  /** Corners of everything stroked or filled: straight ends and ends of cubics, mm. */
  readonly places: readonly (readonly [x: number, y: number])[];
  /** Every cubic: start, two handles, end, mm. */
  readonly cubics: readonly (readonly (readonly [x: number, y: number])[])[];
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPage[]> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0, useSystemFonts: false }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str,
              x: item.transform[4] * MM,
              y: item.transform[5] * MM,
              width: item.width * MM,
              size: Math.hypot(item.transform[2], item.transform[3]) * MM,
              isTurned: Math.abs(item.transform[1]) > 1e-6,
            },
          ]
        : [],
    );
    pages.push({
      width: width * MM,
      height: height * MM,
      words,
      text: words.map(({ text }) => text).join(' '),
      ...pathsOf(await page.getOperatorList(), height),
    });
  }
  await document.destroy();
  return pages;
}

interface Operators {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
}

/** The writer's paths are in the page's frame turned upside down, with nothing else in force around them. */
function pathsOf({ fnArray, argsArray }: Operators, height: number): Pick<ReadPage, 'places' | 'cubics'> {
  const places: [number, number][] = [];
  const cubics: [number, number][][] = [];
  fnArray.forEach((operator, index) => {
    if (operator !== OPS.constructPath) return;
    const [steps, figures] = argsArray[index] as [number[], number[]];
    let at = 0;
    const next = (): [number, number] => {
      const [x = 0, y = 0] = figures.slice(at, at + 2);
      at += 2;
      return [x * MM, (height - y) * MM];
    };
    for (const step of steps) {
      if (step === OPS.moveTo || step === OPS.lineTo) places.push(next());
      else if (step === OPS.curveTo) {
        const cubic = [places.at(-1) ?? [0, 0], next(), next(), next()] as [number, number][];
        cubics.push(cubic);
        places.push(...cubic.slice(3));
      } else if (step === OPS.rectangle) at += 4;
    }
  });
  return { places, cubics };
}
