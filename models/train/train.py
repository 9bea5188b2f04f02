"""Train the acoustic network on packed audio; one GPU or more, or a CPU for a trial.

    python train.py DATA OUT --minutes 9 [--start weights.npz] [--clips FOLDER ...] [--rate 6e-4] [--final]

DATA holds what pack.py wrote (*.ogg, *.json, pronunciations.json), grammar.txt (printed_graph.py) and start.npz; --clips adds folders of FLAC files with
texts.*.tsv. Voices named in voices.HELD_OUT are refused. Writes OUT/weights.npz, now and then and at the end.
"""
import argparse
import json
import random
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np
import soundfile as sf
import torch
import torch.distributed as dist
from torch import nn

from augment import Clips, Noises, Spoiler, random_warp
from decoder_graph import DecoderGraph
from features import RATE, Mfcc
from lexicon import load_lexicon
from lfmmi import GraphBatch, PhoneBigram, SentenceGraph, sentence_score
from network import Network
from printed_graph import PrintedGraph
from voices_held_out import is_held_out

VARIANTS = 3
SEED = 1
LONGEST_LEAD = 1.5
NOISE_ONLY = 0.05
QUIET = 0.35
UNIT_SHARE = 0.2
GATED, UNITS_GATED = 0.3, 0.6
CROWD_SHARE = 0.5
MASKED = 0.5
SHARES = {"kokoro": 0.55, "joe": 0.08, "festival": 0.11, "flite": 0.12, "espeak": 0.12, "rhvoice": 0.1, "people": 0.06, "an4": 0.12, "orders": 0.06, "prompts": 0.05}
CROWD = "commands"
UNITS = ("fsdd", "units", CROWD)
MUMBLED = 0.06
DRAWN = 240000
COUNTED = 12000
SIFTED_ROWS = 512
STEP = 1600


class Utterance:
    """A stretch of the training audio with its words. Used by one thread at a time."""

    def __init__(self, voice, words, offset, length):
        self.voice, self.words, self.offset, self.length, self.graphs, self.missed = voice, words, offset, length, [], 0.0


def read_packs(folder):
    indices = [index for index in sorted(folder.glob("*.json")) if index.name != "pronunciations.json"]
    with ThreadPoolExecutor(len(indices) or 1) as pool:
        sounds = list(pool.map(lambda index: sf.read(index.with_suffix(".ogg"), dtype="int16"), indices))
    for index, (samples, rate) in zip(indices, sounds):
        assert rate == RATE
        yield index.stem, samples, json.loads(index.read_text())


def read_noise(folder, device):
    """Recorded noise in one row, or none."""
    path = folder / "noise" / "recorded.ogg"
    return Clips(torch.from_numpy(sf.read(path, dtype="int16")[0]), device) if path.exists() else None


def read_clips(folder):
    rows = [line.split("\t") for index in sorted(folder.glob("texts.*.tsv")) for line in index.read_text().splitlines() if line.count("\t") == 2]
    with ThreadPoolExecutor(12) as pool:
        sounds = list(pool.map(lambda row: sf.read(folder / row[0], dtype="int16")[0], rows))
    offset, listed = 0, []
    for (_, voice, words), sound in zip(rows, sounds):
        listed.append({"voice": voice, "words": words.split(), "offset": offset, "length": len(sound)})
        offset += len(sound)
    yield folder.name, np.concatenate(sounds) if sounds else np.zeros(0, "int16"), listed


class Corpus:
    """Audio and labels of one training run. Used by one thread at a time."""

    def __init__(self, folders, clip_folders, device, r):
        self.r, self.device, self.known = r, device, set(load_lexicon(folders[0] / "lexicon.txt"))
        self.pronunciations = {}
        for folder in folders:
            self.pronunciations |= json.loads((folder / "pronunciations.json").read_text())
        parts, self.utterances, total = [], [], 0
        sources = [s for f in folders for s in read_packs(f)] + [s for f in clip_folders for s in read_clips(f)]
        for name, samples, listed in sources:
            for u in listed:
                if is_held_out(u["voice"]):
                    raise ValueError(f"{u['voice']} is held out but lies in {name}")
                if all(self.pronunciations.get(w) for w in u["words"]) and u["length"] > 2000:
                    self.utterances.append(Utterance(u["voice"], u["words"], total + u["offset"], u["length"]))
            parts.append(samples)
            total += len(samples)
        self.clips = Clips(torch.from_numpy(np.concatenate(parts)), device)
        self.units = {}
        for u in self.utterances:
            if u.voice.startswith(UNITS):
                self.units.setdefault(u.voice, []).append(u)
        self.crowd = [u.voice for u in self.utterances if u.voice.startswith(CROWD)]
        self.few = [voice for voice in self.units if not voice.startswith(CROWD)]
        spoken = [u for u in self.utterances if not u.voice.startswith(UNITS)]
        for u in spoken:
            u.graphs = [self.graph(u.words) for _ in range(VARIANTS if set(u.words) - self.known else 1)]
        self.noises = Noises(self.clips, device, read_noise(folders[0], device))
        self.spoil = Spoiler(self.noises, device)
        self.mfcc = Mfcc(device)
        self.spoken, self.sentences = spoken, []

    def choose(self, network, bigram, say):
        """Leave out the Kokoro sentences in which a network finds least of their words: the last ones are mumbled away in some, and
        a network that is told of words in silence hears words in silence."""
        kokoro = sorted((u for u in self.spoken if u.voice.startswith("kokoro")), key=lambda u: u.length)
        for place in range(0, len(kokoro), SIFTED_ROWS):
            rows = kokoro[place : place + SIFTED_ROWS]
            for u, missed in zip(rows, self.missed(network, bigram, rows)):
                u.missed = missed / len(u.words)
        worst = sorted(kokoro, key=lambda u: u.missed)[int(len(kokoro) * (1 - MUMBLED)) :]
        if worst:
            say(f"{len(worst)} Kokoro sentences left out, which miss {worst[0].missed:.1f} nats a word or more, such as {' '.join(worst[-1].words)!r}")
        out = set(map(id, worst))
        self.sentences = sorted(self.shared_out([u for u in self.spoken if id(u) not in out]), key=lambda u: u.length)

    @torch.no_grad()
    def missed(self, network, bigram, rows):
        """How much worse the words of each clean sentence explain its sound than the best phone strings do, in nats."""
        count = -(-(max(u.length for u in rows) + RATE) // STEP) * STEP
        tensor = lambda values, kind: torch.tensor(values, device=self.device, dtype=kind)
        lengths = [u.length for u in rows]
        sound = self.clips.read(tensor([u.offset for u in rows], torch.long), tensor(lengths, torch.float64), tensor([1.0] * len(rows), torch.float64), tensor([RATE / 2] * len(rows), torch.float64), count)
        scores = network(self.mfcc(sound + torch.randn_like(sound))).float()
        frames = ((tensor(lengths, torch.long) + RATE - 400) // 160 // 3).clamp(max=scores.shape[1])
        spoken = sentence_score(scores, frames, GraphBatch([u.graphs[0] for u in rows], self.device))
        return (bigram.score(scores, frames) - spoken).tolist()

    def shared_out(self, spoken):
        """The utterances repeated so that each engine is heard as often as SHARES says, whatever it has spoken."""
        engines = {}
        for u in spoken:
            engines.setdefault(u.voice.split("-")[0], []).append(u)
        present = sum(SHARES[engine] for engine in engines)
        return [u for engine, own in sorted(engines.items()) for u in self.r.choices(own, k=int(DRAWN * SHARES[engine] / present))]

    def graph(self, words):
        return SentenceGraph(words, self.pronunciations, self.r, self.known)

    def draw(self, rows, quiet_share):
        """A batch: features, frames, graphs."""
        if self.units and self.r.random() < UNIT_SHARE:
            return self.batch([self.unit_string() for _ in range(rows)], quiet_share, UNITS_GATED)
        place = int(self.r.random() * max(1, len(self.sentences) - 3 * rows))
        chosen = self.r.sample(self.sentences[place : place + 3 * rows], min(rows, len(self.sentences[place : place + 3 * rows])))
        return self.batch([([u], self.r.choice(u.graphs)) for u in chosen], quiet_share, GATED)

    def unit_string(self):
        """Words of one speaker in a row. Few speakers have many words, a crowd has few each: the more, the oftener drawn."""
        from_crowd = not self.few or (self.crowd and self.r.random() < CROWD_SHARE)
        speaker = self.units[self.r.choice(self.crowd if from_crowd else self.few)]
        spoken = [self.r.choice(speaker) for _ in range(self.r.choice([1, 1, 1, 2, 2, 3, 4, 5]))]
        return spoken, self.graph([w for u in spoken for w in u.words])

    def lead(self):
        return int(RATE * (self.r.uniform(0.02, 0.5) if self.r.random() < 0.65 else self.r.uniform(0.5, LONGEST_LEAD)))

    def batch(self, items, quiet_share, gated_share):
        r, device, rows = self.r, self.device, len(items)
        speeds = np.array([r.uniform(0.82, 1.22) for _ in items])
        slots = max(len(spoken) for spoken, _ in items)
        offsets, lengths, starts = np.zeros((3, slots, rows))
        ends, active, stops = np.zeros((3, rows))
        for row, (spoken, _) in enumerate(items):
            place = self.lead()
            for slot, u in enumerate(spoken):
                offsets[slot, row], lengths[slot, row], starts[slot, row] = u.offset, u.length, place
                place += int(u.length / speeds[row]) + int(r.uniform(0, 0.25) * RATE * (len(spoken) > 1))
                active[row] += u.length / speeds[row]
            stops[row] = place
            ends[row] = place + self.lead()
        count = -(-int(ends.max()) // STEP) * STEP
        tensor = lambda a, kind: torch.tensor(a, device=device, dtype=kind)
        speech = sum(
            self.clips.read(tensor(offsets[s], torch.long), tensor(lengths[s], torch.float64), tensor(speeds, torch.float64), tensor(starts[s], torch.float64), count)
            for s in range(slots)
        )
        silent = np.array([r.random() < NOISE_ONLY for _ in items])
        spans = torch.stack([tensor(starts[0], torch.float32), tensor(stops, torch.float32)], 1)
        sound = self.spoil(speech, tensor(active, torch.float32), spans, quiet_share, gated_share, tensor(silent, torch.bool))
        graphs = [self.graph([]) if empty else graph for empty, (_, graph) in zip(silent, items)]
        frames = ((tensor(ends, torch.long) - 400) // 160 + 3) // 3
        return self.mfcc(sound, random_warp(rows, device), MASKED), frames, GraphBatch(graphs, device)


class Competitors:
    """What the words of a sentence compete with: all strings of phones and, as heavily as ``strict`` says, what the decoder can hear. Immutable."""

    def __init__(self, bigram, folder, strict, device):
        self.bigram, self.strict = bigram, strict
        if strict:
            self.decoder = DecoderGraph(PrintedGraph.read(folder / "grammar.txt"), load_lexicon(folder / "lexicon.txt"), device)

    def excess(self, scores, frames, graph):
        """How much more than the words their competitors weigh, in nats (batch), and which rows count."""
        spoken = sentence_score(scores, frames, graph)
        usable = spoken > -1e6
        excess = self.bigram.score(scores, frames) - spoken
        if self.strict:
            excess = excess + self.strict * (self.decoder.score(scores, frames) - spoken) * graph.heard
        return torch.where(usable, excess, 0.0), usable


def loss_of(network, competitors, batch, drop, modesty):
    features, frames, graph = batch
    with torch.autocast(features.device.type, torch.bfloat16, enabled=features.is_cuda):
        scores = network(features, drop)
    scores = scores.float()
    frames = frames.clamp(max=scores.shape[1])
    excess, usable = competitors.excess(scores, frames, graph)
    loss = excess.sum() / (frames * usable).sum().clamp(min=1)
    return loss, modesty * scores.pow(2).mean(), int((~usable).sum())


class Team:
    """The processes that train together, one a GPU. Used by one thread at a time."""

    def __init__(self, size):
        self.size = size

    def mean(self, tensors):
        """Replace each tensor by its mean over all processes."""
        if self.size == 1:
            return
        flat = torch.cat([t.detach().reshape(-1).float() for t in tensors])
        dist.all_reduce(flat)
        place = 0
        for t in tensors:
            t.detach().copy_((flat[place : place + t.numel()] / self.size).view_as(t))
            place += t.numel()


def store(network, team, path, first):
    team.mean([b for b in network.buffers() if b.dtype.is_floating_point])
    if first:
        np.savez(path, **network.export())


def train(corpus, network, arguments, team, first, say):
    counted = random.Random(SEED).sample(corpus.spoken, min(COUNTED, len(corpus.spoken)))
    bigram = PhoneBigram([g for u in counted for g in u.graphs], random.Random(SEED), corpus.device)
    competitors = Competitors(bigram, arguments.data[0], arguments.strict, corpus.device)
    corpus.choose(network.eval(), bigram, say)
    for layer in network.first(arguments.keep):
        layer.requires_grad_(False)
    learned = [p for p in network.parameters() if p.requires_grad]
    optimiser = torch.optim.AdamW(learned, lr=arguments.rate, weight_decay=1e-3)
    begin, total, step, sums = time.time(), arguments.minutes * 60, 0, np.zeros(3)
    done = torch.zeros(1, device=corpus.device)
    while done.item() < 1:
        share = done.item()
        decay = (1 - share) if arguments.final else (1 - 0.6 * share)
        for group in optimiser.param_groups:
            group["lr"] = arguments.rate * min(1, (step + 1) / 100) * max(0.01, decay)
        network.train()
        loss, extra, lost = loss_of(network, competitors, corpus.draw(arguments.rows, QUIET), 0.1 if share < 0.9 else 0.0, arguments.modesty)
        optimiser.zero_grad()
        (loss + extra).backward()
        done.fill_((time.time() - begin) / total)
        team.mean([p.grad for p in learned] + [done])
        if torch.isfinite(nn.utils.clip_grad_norm_(learned, 5.0)):
            optimiser.step()
        step += 1
        sums += [loss.item(), 1, lost]
        if step % arguments.every == 0:
            say(f"step {step} done {share:.2f} loss {sums[0] / sums[1]:.4f} unusable {int(sums[2])} rate {optimiser.param_groups[0]['lr']:.1e}")
            sums[:] = 0
            store(network, team, arguments.out / "weights.npz", first)
    store(network, team, arguments.out / "weights.npz", first)
    say(f"finished after {step} steps")


def work(rank, arguments):
    """One process of the team, on its own GPU if there is one."""
    begin = time.time()
    say = lambda text: rank == 0 and print(f"[{time.time() - begin:6.1f}] {text}", flush=True)
    gpu = torch.cuda.is_available()
    device = f"cuda:{rank}" if gpu else "cpu"
    if gpu:
        torch.cuda.set_device(rank)
    if arguments.processes > 1:
        address = f"file://{arguments.out.resolve()}/meeting"
        dist.init_process_group("nccl" if gpu else "gloo", init_method=address, rank=rank, world_size=arguments.processes)
    torch.backends.cuda.matmul.allow_tf32 = torch.backends.cudnn.allow_tf32 = True
    torch.manual_seed(arguments.seed + rank)
    corpus = Corpus(arguments.data, arguments.clips, device, random.Random(arguments.seed + rank))
    hours = sum(u.length for u in corpus.utterances) / RATE / 3600
    say(f"{arguments.processes} x {device}: {len(corpus.utterances)} utterances, {hours:.2f} h, {len(corpus.units)} speakers of units")
    network = Network(dict(np.load(arguments.start or arguments.data[0] / "start.npz"))).to(device)
    train(corpus, network, arguments, Team(arguments.processes), rank == 0, say)
    if arguments.processes > 1:
        dist.destroy_process_group()


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("data", type=lambda t: [Path(x) for x in t.split(",")])
    parser.add_argument("out", type=Path)
    parser.add_argument("--minutes", type=float, default=9)
    parser.add_argument("--rate", type=float, default=6e-4)
    parser.add_argument("--rows", type=int, default=192)
    parser.add_argument("--every", type=int, default=100)
    parser.add_argument("--seed", type=int, default=SEED, help="of what is drawn; the phone bigram is the same for all")
    parser.add_argument("--keep", type=int, default=1, help="how many of the first layers stay as they are, the fixed transform included")
    parser.add_argument("--modesty", type=float, default=5e-4, help="weight of the mean squared score in the loss: more of it makes less sure")
    parser.add_argument("--strict", type=float, default=1, help="weight of the competition with what the decoder can hear")
    parser.add_argument("--start", type=Path)
    parser.add_argument("--processes", type=int, default=max(1, torch.cuda.device_count()))
    parser.add_argument("--clips", type=Path, nargs="*", default=[])
    parser.add_argument("--final", action="store_true", help="let the learning rate fall to nothing")
    arguments = parser.parse_args()
    arguments.out.mkdir(parents=True, exist_ok=True)
    (arguments.out / "meeting").unlink(missing_ok=True)
    if arguments.processes == 1:
        work(0, arguments)
    else:
        torch.multiprocessing.spawn(work, (arguments,), arguments.processes)


if __name__ == "__main__":
    main()
