/** A GLB or STL file as its reader sees it, turned so that pockets show. Loaded late: most people never open it. */
import { Canvas } from '@react-three/fiber';
import { useEffect, useMemo, useState } from 'react';
import { Box3, Mesh, MeshLambertMaterial, type Object3D, Vector3 } from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import type { OutputFile } from '#run/output-file.ts';

const TILT = -0.9;

export function SolidPreview({ file }: { readonly file: OutputFile }) {
  const [solid, setSolid] = useState<Object3D>();
  useEffect(() => {
    let isGone = false;
    void readSolid(file).then((read) => {
      if (!isGone) setSolid(read);
    });
    return () => {
      isGone = true;
    };
  }, [file]);
  const size = useMemo(() => (solid === undefined ? undefined : sizeOf(solid)), [solid]);
  if (solid === undefined || size === undefined) return <p className="aside">Reading it back.</p>;
  const { middle, longest } = size;
  const isFlatUp = file.mime === 'model/gltf-binary';
  return (
    <div className="solid-preview" role="img" aria-label={`${file.name}: ${file.what}`}>
      <Canvas orthographic frameloop="demand" camera={{ position: [0, 0, 2], zoom: 200 }}>
        <ambientLight intensity={0.9} />
        <directionalLight position={[1, 2, 3]} intensity={1.6} />
        <group rotation={[isFlatUp ? TILT + Math.PI / 2 : TILT, 0, 0.4]} scale={1 / longest}>
          <primitive object={solid} position={[-middle.x, -middle.y, -middle.z]} />
        </group>
      </Canvas>
    </div>
  );
}

async function readSolid({ bytes, mime }: OutputFile): Promise<Object3D> {
  const data = bytes.slice().buffer;
  if (mime === 'model/gltf-binary') return (await new GLTFLoader().parseAsync(data, '')).scene;
  return new Mesh(new STLLoader().parse(data), new MeshLambertMaterial({ color: '#8b96a1' }));
}

function sizeOf(solid: Object3D): { middle: Vector3; longest: number } {
  const box = new Box3().setFromObject(solid);
  const size = box.getSize(new Vector3());
  return { middle: box.getCenter(new Vector3()), longest: Math.max(size.x, size.y, size.z) };
}
