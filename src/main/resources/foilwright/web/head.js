// The head that can be turned. Loaded when it is first asked for.
import * as three from '/assets/three.module.min.js';

const LIT = 0x005a8c;
const INK = 0x3a3530;
const CENTRE = new three.Vector3(0, 5, 25);
const FAR = 560;
const START = { turn: 205, rise: 22 };
const STEP = 10;

function geometry(part) {
  const shape = new three.BufferGeometry();
  shape.setAttribute('position', new three.Float32BufferAttribute(part.points, 3));
  shape.setIndex(part.corners);
  shape.computeVertexNormals();
  return shape;
}

function mesh(part, colour) {
  return new three.Mesh(
    geometry(part),
    new three.MeshLambertMaterial({ color: colour, side: three.DoubleSide }),
  );
}

function line(points, colour = 0x5f5952) {
  const shape = new three.BufferGeometry();
  shape.setAttribute('position', new three.Float32BufferAttribute(points, 3));
  return new three.Line(shape, new three.LineBasicMaterial({ color: colour }));
}

/** A thin pane with its edge, seen only while its section is picked. */
function pane(section) {
  const shape = new three.BufferGeometry();
  shape.setAttribute('position', new three.Float32BufferAttribute(section.plane, 3));
  shape.setIndex([0, 1, 2, 0, 2, 3]);
  const glass = new three.Mesh(
    shape,
    new three.MeshBasicMaterial({
      color: LIT, transparent: true, opacity: 0.16, side: three.DoubleSide, depthWrite: false,
    }),
  );
  const edge = new three.LineLoop(
    new three.BufferGeometry().setAttribute(
      'position', new three.Float32BufferAttribute(section.plane, 3),
    ),
    new three.LineBasicMaterial({ color: LIT }),
  );
  const both = new three.Group();
  both.add(glass, edge);
  both.visible = false;
  both.userData = { section: String(section.section) };
  return both;
}

function number(foil) {
  const canvas = document.createElement('canvas');
  canvas.width = 64;
  canvas.height = 64;
  const pen = canvas.getContext('2d');
  pen.font = '38px "DejaVu Sans", sans-serif';
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.lineWidth = 6;
  pen.lineJoin = 'round';
  pen.strokeStyle = '#ffffff';
  pen.strokeText(String(foil.number), 32, 34);
  pen.fillStyle = '#1f1d1a';
  pen.fillText(String(foil.number), 32, 34);
  const letters = new three.CanvasTexture(canvas);
  letters.colorSpace = three.SRGBColorSpace;
  letters.generateMipmaps = false;
  letters.minFilter = three.LinearFilter;
  const sprite = new three.Sprite(new three.SpriteMaterial({ map: letters }));
  sprite.position.set(...foil.centre);
  sprite.scale.set(13, 13, 1);
  return sprite;
}

export function turningHead(canvas, pin) {
  const renderer = new three.WebGLRenderer({ canvas, antialias: true });
  const camera = new three.PerspectiveCamera(26, 1, 100, 1500);
  camera.up.set(0, 0, 1);
  let scene = new three.Scene();
  let foils = [];
  let partings = [];
  let panes = [];
  let picked = null;
  let lit = new Set();
  let view = { ...START };

  function draw() {
    const width = canvas.clientWidth;
    if (!width) return;
    renderer.setPixelRatio(window.devicePixelRatio);
    renderer.setSize(width, canvas.clientHeight, false);
    const turn = (view.turn * Math.PI) / 180;
    const rise = (view.rise * Math.PI) / 180;
    camera.aspect = width / canvas.clientHeight;
    camera.position.set(
      FAR * Math.cos(rise) * Math.sin(turn),
      FAR * Math.cos(rise) * Math.cos(turn),
      FAR * Math.sin(rise),
    );
    camera.position.add(CENTRE);
    camera.lookAt(CENTRE);
    camera.updateProjectionMatrix();
    renderer.render(scene, camera);
    canvas.dataset.turn = `${view.turn} ${view.rise}`;
  }

  function move(turn, rise) {
    view = { turn: view.turn + turn, rise: Math.max(-40, Math.min(89, view.rise + rise)) };
    draw();
  }

  function show(model) {
    scene.traverse((thing) => {
      thing.geometry?.dispose();
      thing.material?.map?.dispose();
      thing.material?.dispose();
    });
    scene = new three.Scene();
    scene.background = new three.Color(0xffffff);
    scene.add(new three.HemisphereLight(0xffffff, 0xd8d0c4, 3));
    const lamp = new three.DirectionalLight(0xffffff, 0.7);
    lamp.position.set(200, -300, 600);
    scene.add(lamp);
    scene.add(mesh(model.form, 0xf7f4ee));
    scene.add(mesh(model.scalp, 0xe3ded5));
    for (const part of model.backgrounds) scene.add(mesh(part, 0x9a9288));
    for (const points of model.lines) scene.add(line(points));
    foils = model.foils.map((foil) => {
      const part = mesh(foil, foil.colour);
      part.userData = { number: String(foil.number), hue: foil.colour };
      scene.add(part, number(foil));
      return part;
    });
    partings = [];
    panes = [];
    for (const section of model.sections) {
      for (const points of section.partings) {
        const parting = line(points, INK);
        parting.userData = { section: String(section.section) };
        partings.push(parting);
      }
      if (section.plane) panes.push(pane(section));
    }
    if (partings.length) scene.add(...partings);
    if (panes.length) scene.add(...panes);
    light(lit);
    pick(picked);
  }

  function light(numbers) {
    lit = numbers;
    for (const foil of foils) {
      foil.material.color.set(numbers.has(foil.userData.number) ? LIT : foil.userData.hue);
    }
    draw();
  }

  /** Shows the planes of a section, by its place, and its partings in the accent; null for none. */
  function pick(section) {
    picked = section;
    for (const parting of partings) {
      parting.material.color.set(parting.userData.section === section ? LIT : INK);
    }
    for (const each of panes) each.visible = each.userData.section === section;
    canvas.dataset.planes = String(panes.filter((each) => each.visible).length);
    draw();
  }

  function turnTo(turn, rise) {
    view = { turn, rise };
    draw();
  }

  let held = null;
  canvas.addEventListener('pointerdown', (event) => {
    held = { x: event.clientX, y: event.clientY, far: 0 };
    canvas.setPointerCapture(event.pointerId);
  });
  canvas.addEventListener('pointermove', (event) => {
    if (!held) return;
    const x = event.clientX - held.x;
    const y = event.clientY - held.y;
    held = { x: event.clientX, y: event.clientY, far: held.far + Math.abs(x) + Math.abs(y) };
    move(-x / 2, y / 2);
  });
  canvas.addEventListener('pointerup', (event) => {
    const still = held && held.far < 4;
    held = null;
    if (!still) return;
    const box = canvas.getBoundingClientRect();
    const ray = new three.Raycaster();
    ray.setFromCamera(
      new three.Vector2(
        (2 * (event.clientX - box.left)) / box.width - 1,
        1 - (2 * (event.clientY - box.top)) / box.height,
      ),
      camera,
    );
    const hit = ray.intersectObjects(scene.children.filter((thing) => thing.isMesh))[0];
    if (hit?.object.userData.number) pin(hit.object.userData.number);
  });
  canvas.addEventListener('keydown', (event) => {
    const moves = {
      ArrowLeft: [STEP, 0],
      ArrowRight: [-STEP, 0],
      ArrowUp: [0, STEP],
      ArrowDown: [0, -STEP],
    };
    if (moves[event.key]) {
      event.preventDefault();
      move(...moves[event.key]);
    } else if (event.key === 'Home') {
      event.preventDefault();
      view = { ...START };
      draw();
    }
  });
  new ResizeObserver(draw).observe(canvas);
  return { show, light, pick, turnTo };
}
