"""Makes learnReference.json: logistic regression, boosted trees, area under the ROC curve, Brier score and a calibration curve by
scikit-learn, on Fisher's irises (versicolor against virginica, as scikit-learn ships them).

Run with Debian's scikit-learn from the top of the repository:

    /usr/bin/python3 tests/reference/makeLearnReference.py
"""

import datetime
import json
import pathlib
import platform

import numpy as np
import sklearn
from sklearn.calibration import calibration_curve
from sklearn.datasets import load_iris
from sklearn.ensemble import HistGradientBoostingClassifier
from sklearn.linear_model import LogisticRegression
from sklearn.metrics import brier_score_loss, roc_auc_score

COMMAND = "/usr/bin/python3 tests/reference/makeLearnReference.py"


def fit(rows, labels, penalty, weights=None):
    model = LogisticRegression(C=1 / penalty, tol=1e-12, max_iter=10000, solver="newton-cholesky")
    model.fit(rows, labels, sample_weight=weights)
    return model, {
        "penalty": penalty,
        "weights": None if weights is None else weights.tolist(),
        "intercept": float(model.intercept_[0]),
        "coefficients": model.coef_[0].tolist(),
    }


def main():
    iris = load_iris()
    kept = iris.target != 0
    rows, labels = iris.data[kept], (iris.target[kept] == 2).astype(int)
    uneven = np.where(labels == 1, 2.0, 0.5)
    model, plain = fit(rows, labels, 1.0)
    # Of one feature alone, so that the two kinds overlap.
    short = LogisticRegression(C=1.0, tol=1e-12, max_iter=10000).fit(rows[:, :2], labels)
    probability = short.predict_proba(rows[:, :2])[:, 1]
    happened, said = calibration_curve(labels, probability, n_bins=5)
    out = {
        "what": "logistic regression, boosted trees, ROC area, Brier score and calibration curve on Fisher's irises, two kinds",
        "version": f"scikit-learn {sklearn.__version__}, NumPy {np.__version__}, Python {platform.python_version()}",
        "command": COMMAND,
        "date": datetime.date.today().isoformat(),
        "rows": rows.tolist(),
        "labels": labels.tolist(),
        "fits": [plain, fit(rows, labels, 0.01)[1], fit(rows, labels, 3.0, uneven)[1]],
        "two_features": {
            "probability": probability.tolist(),
            "roc_area": float(roc_auc_score(labels, probability)),
            "brier": float(brier_score_loss(labels, probability)),
            "calibration_happened": happened.tolist(),
            "calibration_said": said.tolist(),
        },
    }
    # Trees three questions deep, as ours are; every value of an iris has a bin of its own.
    boosting = HistGradientBoostingClassifier(
        max_iter=40, learning_rate=0.1, max_depth=3, max_leaf_nodes=8, min_samples_leaf=5, l2_regularization=1.0,
        early_stopping=False,
    ).fit(rows, labels)
    out["boosted"] = {
        "trees": 40, "rate": 0.1, "penalty": 1.0, "fewest_rows": 5,
        "odds": boosting.decision_function(rows).tolist(),
    }
    path = pathlib.Path("tests/reference/learnReference.json")
    path.write_text(json.dumps(out) + "\n")


if __name__ == "__main__":
    main()
