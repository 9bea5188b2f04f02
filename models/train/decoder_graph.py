"""The competing sentences as the decoder has them: the grammar's graph, the lexicon's words and the way round the grammar.

printed_graph.py tells where the grammar's graph comes from.
"""
import math
import warnings

import torch

from graph import SILENCE_COST, UNKNOWN_COST
from lexicon import SILENCE, UNKNOWN, UNKNOWN_WORD, numbers
from lfmmi import alive, emissions

warnings.filterwarnings("ignore", "Sparse ")


class States:
    """The phone states of words and pauses, while a DecoderGraph is made. Used by one thread at a time.

    ``chains``: those of a word by the node it leads to and its phones; ``arrivals``: the last ones of the words that lead to a node.
    """

    def __init__(self):
        self.phones, self.chains, self.arrivals = [], {}, {}

    def add(self, phone):
        self.phones.append(phone)
        return len(self.phones) - 1

    def first_of(self, target, phones):
        """First state of a word that leads to a node; words that sound alike share theirs."""
        if (target, phones) not in self.chains:
            self.chains[target, phones] = [self.add(phone) for phone in phones]
            self.arrivals.setdefault(target, []).append(self.chains[target, phones][-1])
        return self.chains[target, phones][0]


class DecoderGraph:
    """Phone states of every sentence that can be heard, with the decoder's costs. Immutable.

    A state's weight goes on inside its word by ``within``, and from the last phones of words to the graph's nodes by ``nodes``, from the
    nodes to the first phones of the next words by ``first``. After a word silence is possible, one state a node.
    """

    def __init__(self, graph, lexicon, device):
        states = States()
        entries = [
            (states.first_of(target, phones), source, math.exp(-cost - more))
            for source, target, word, cost in graph.arcs
            for phones, more in self._pronunciations(word, lexicon)
        ]
        within, onward, final = self._links(graph, states)
        silence = states.add(SILENCE)
        onward.append((graph.start, silence, 1.0))
        final[silence] = math.exp(-graph.ends.get(graph.start, math.inf))
        begin = {silence: 1.0} | {state: weight for state, source, weight in entries if source == graph.start}
        count, nodes = len(states.phones), 1 + max(max(source, target) for source, target, _, _ in graph.arcs)
        column = lambda weights: torch.tensor([weights.get(state, 0.0) for state in range(count)], device=device)[:, None]
        self.final, self.begin = column(final), column(begin)
        self.within, self.nodes, self.first = (
            self._matrix(*part, device) for part in ((within, count, count), (onward, nodes, count), (entries, count, nodes))
        )
        self.within_back, self.nodes_back, self.first_back = (self._turned(m) for m in (self.within, self.nodes, self.first))
        self.phones = torch.tensor(states.phones, device=device)
        self.by_phone = self._matrix([(phone, state, 1.0) for state, phone in enumerate(states.phones)], UNKNOWN_WORD + 1, count, device)

    @staticmethod
    def _pronunciations(word, lexicon):
        return [((UNKNOWN_WORD,), UNKNOWN_COST)] if word == UNKNOWN else [(tuple(numbers(p)), 0.0) for p in lexicon[word]]

    @staticmethod
    def _links(graph, states):
        """Ways inside words and into pauses, ways from words and pauses to nodes, and what it weighs to end in a state."""
        within = [(state + 1, state, 1.0) for chain in states.chains.values() for state in chain[:-1]]
        pause, onward, final = math.exp(-SILENCE_COST), [], {}
        for node, last in sorted(states.arrivals.items()):
            silence = states.add(SILENCE)
            within += [(silence, state, pause) for state in last]
            leaving = [(node, 1.0), *((target, math.exp(-cost)) for target, cost in graph.silent.get(node, ()))]
            ending = max((math.exp(-graph.ends[target]) * weight for target, weight in leaving if target in graph.ends), default=0.0)
            for state, weight in [(silence, 1.0), *((state, pause) for state in last)]:
                onward += [(target, state, weight * share) for target, share in leaving]
                final[state] = ending
        return within, onward, final

    @staticmethod
    def _matrix(entries, rows, columns, device):
        places = torch.tensor([entry[:2] for entry in entries]).T
        values = torch.tensor([entry[2] for entry in entries])
        return torch.sparse_coo_tensor(places, values, (rows, columns)).coalesce().to_sparse_csr().to(device)

    @staticmethod
    def _turned(matrix):
        return matrix.to_sparse_coo().t().coalesce().to_sparse_csr()

    def score(self, scores, frames):
        """ln of the summed weight of all sentences that can be heard (batch)."""
        return DecoderScore.apply(scores, frames, self)


class DecoderScore(torch.autograd.Function):
    """ln of the summed weight of all paths through a DecoderGraph; weights are scaled to a sum of one in each frame. The gradient is the
    share of the paths that use an output in a frame."""

    @staticmethod
    def forward(ctx, scores, frames, graph):
        count = scores.shape[1]
        bounded, inside = emissions(scores)
        top = bounded.amax(-1, keepdim=True)
        weights = (bounded - top).exp().permute(1, 2, 0).contiguous()
        live = alive(frames, count).transpose(1, 2)
        totals = torch.ones(count, 1, scores.shape[0], device=scores.device, dtype=scores.dtype)
        paths = []
        for t in range(count):
            enter, stay = (weights[t, k::2][graph.phones] for k in (0, 1))
            if t == 0:
                following = graph.begin * enter
            else:
                arrived = graph.within @ paths[-1] + graph.first @ (graph.nodes @ paths[-1])
                following = torch.addcmul(paths[-1] * stay, arrived, enter)
            totals[t] = following.sum(0, keepdim=True)
            following /= totals[t]
            paths.append(following if t == 0 else torch.where(live[t], following, paths[-1]))
        final = (paths[-1] * graph.final).sum(0)
        ctx.graph = graph
        ctx.save_for_backward(weights, totals, live, final, inside, *paths)
        return ((totals.log() + top.permute(1, 2, 0)) * live).sum((0, 1)) + final.log()

    @staticmethod
    def backward(ctx, weight):
        weights, totals, live, final, inside, *paths = ctx.saved_tensors
        graph = ctx.graph
        ahead = graph.final / final
        gradient = torch.zeros_like(weights)
        for t in range(len(paths) - 1, -1, -1):
            enter, stay = (weights[t, k::2][graph.phones] / totals[t] for k in (0, 1))
            remained = paths[t - 1] * stay * ahead if t else torch.zeros_like(ahead)
            gradient[t, 1::2] = graph.by_phone @ remained
            gradient[t, 0::2] = (graph.by_phone @ (paths[t] * ahead)) - gradient[t, 1::2]
            gradient[t] *= live[t]
            after = ahead * enter
            before = graph.within_back @ after + graph.nodes_back @ (graph.first_back @ after)
            ahead = torch.where(live[t], torch.addcmul(before, ahead, stay), ahead)
        return gradient.permute(2, 0, 1) * weight[:, None, None] * inside, None, None
