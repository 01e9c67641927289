// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Embedding: roughness flattened under load shortens the grip and slackens the bolt.
///
/// The amounts of all pressed faces add up to f_Z; the preload lost is f_Z/(delta_S + delta_P), so a short stiff joint loses most.
/// The tabulated amounts (2 to 6.5 micrometres a face) hold for bare metal below the permissible surface pressure: coatings and
/// layers need their own allowance. Faces of unequal amounts: give their sum as one.
struct EmbeddingLoss {
    static constexpr Formula formula{.name = "embedding-loss",
                                     .title = "Preload lost by embedding",
                                     .range = "bare metal faces below the permissible surface pressure",
                                     .source = {"VDI 2230 Part 1", "2003", "5.4.2.1 and Table 5", Basis::memory}};

    struct Inputs {
        Length thread_amount, face_amount, interface_amount;
        int thread_count = 1, face_count = 2, interface_count = 1;
        Resilience bolt_resilience, part_resilience;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"thread-amount", "f_G", "embedding of a pair of threads"}, self.thread_amount, Range{um(0), um(1000)});
            field(Name{"face-amount", "f_K", "embedding of a head or nut face"}, self.face_amount, Range{um(0), um(1000)});
            field(Name{"interface-amount", "f_T", "embedding of an inner interface"}, self.interface_amount, Range{um(0), um(1000)});
            field(Name{"thread-count", "n_G", "number of loaded thread pairs"}, self.thread_count, Range{0, 2}, defaulted);
            field(Name{"face-count", "n_K", "number of head and nut faces"}, self.face_count, Range{0, 2}, defaulted);
            field(Name{"interface-count", "n_T", "number of inner interfaces"}, self.interface_count, Range{0, 50}, defaulted);
            field(Name{"bolt-resilience", "delta_S", "resilience of the bolt"}, self.bolt_resilience, Range{mm_per_N(1e-9), mm_per_N(1)});
            field(Name{"part-resilience", "delta_P", "resilience of the clamped parts"}, self.part_resilience,
                  Range{mm_per_N(1e-9), mm_per_N(1)});
        }
    };

    struct Answer {
        Length amount;
        Force loss;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"amount", "f_Z", "total embedding"}, self.amount);
            field(Name{"loss", "F_Z", "preload lost by embedding"}, self.loss);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [f_G, f_K, f_T, n_G, n_K, n_T, delta_S, delta_P] = in;
        FAYWRIGHT_STEP(f_Z, double(n_G) * f_G + double(n_K) * f_K + double(n_T) * f_T);
        FAYWRIGHT_STEP(F_Z, f_Z / (delta_S + delta_P));
        return {f_Z, F_Z};
    }
};

}  // namespace faywright
