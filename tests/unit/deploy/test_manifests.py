"""The Kubernetes manifests against the schemas of Kubernetes, its hardening guide and the service that they run.

Sources: the JSON schemas of the Kubernetes API as packed in kubernetes-validate; Kubernetes documentation, "Pod
Security Standards", profile Restricted (the securityContext fields, from memory), "Container lifecycle hooks" (the
grace period runs while preStop does, from memory), "Network Policies".
"""

import os
from pathlib import Path
from typing import Any

import kubernetes_validate
import pytest
import yaml

from service.app import create_app
from service.settings import PREFIX, BadSettings, Settings, load_settings

ROOT = Path(__file__).parents[3]
DEPLOY = ROOT / "deploy"
# From the first release that knows every field used here (`preStop.sleep`) to the last one packed.
VERSIONS = sorted({v[: v.rindex(".")] for v in kubernetes_validate.utils.all_versions() if int(v.split(".")[1]) >= 30})
RESOURCES = sorted(path.name for path in DEPLOY.glob("*.yaml") if path.name != "kustomization.yaml")
PROBES = ["startupProbe", "readinessProbe", "livenessProbe"]


def read(name: str) -> dict[str, Any]:
    resource: dict[str, Any] = yaml.safe_load((DEPLOY / name).read_text())
    return resource


@pytest.fixture(scope="module")
def pod() -> dict[str, Any]:
    spec: dict[str, Any] = read("deployment.yaml")["spec"]["template"]["spec"]
    return spec


@pytest.fixture(scope="module")
def container(pod: dict[str, Any]) -> dict[str, Any]:
    (only,) = pod["containers"]
    assert isinstance(only, dict)
    return only


@pytest.fixture(scope="module")
def settings(container: dict[str, Any]) -> Settings:
    """The settings that the pod's environment gives."""
    with pytest.MonkeyPatch.context() as patch:
        for name in [name for name in os.environ if name.startswith(PREFIX) or name == "PORT"]:
            patch.delenv(name)
        for item in container["env"]:
            if "value" in item:
                patch.setenv(item["name"], item["value"])
        # From the secret, without which the pod does not start.
        patch.setenv("FITMENT_API_KEYS", "shop:" + "ab" * 32)
        return load_settings(os.environ)


@pytest.mark.parametrize("version", VERSIONS)
@pytest.mark.parametrize("name", RESOURCES)
def test_a_manifest_is_valid_for_each_release_of_kubernetes(name: str, version: str) -> None:
    assert kubernetes_validate.validate(read(name), version, strict=True) == version


def test_the_strict_schema_refuses_a_misspelt_field() -> None:
    resource = read("deployment.yaml")
    resource["spec"]["template"]["spec"]["terminationGracePeriod"] = 30
    with pytest.raises(kubernetes_validate.ValidationError):
        kubernetes_validate.validate(resource, VERSIONS[-1], strict=True)


@pytest.mark.parametrize(
    "kind", ["Deployment", "Service", "HorizontalPodAutoscaler", "PodDisruptionBudget", "NetworkPolicy"]
)
def test_each_kind_is_there_once(kind: str) -> None:
    assert [read(name)["kind"] for name in RESOURCES].count(kind) == 1


def test_everything_is_applied_together() -> None:
    assert sorted(read("kustomization.yaml")["resources"]) == RESOURCES


def test_the_image_is_of_this_version(container: dict[str, Any]) -> None:
    from service import __version__

    assert container["image"] == f"fitment-service:{__version__}"
    assert read("kustomization.yaml")["images"] == [{"name": "fitment-service", "newTag": __version__}]


@pytest.mark.parametrize("probe", PROBES)
def test_a_probe_asks_a_route_that_exists(container: dict[str, Any], probe: str) -> None:
    asked = container[probe]["httpGet"]
    paths = [route.path for route in create_app(Settings.model_construct()).routes if "GET" in (route.methods or ())]
    assert asked["path"] in paths
    assert asked["port"] == "operation"


def test_only_readiness_asks_whether_the_process_is_stopping(container: dict[str, Any]) -> None:
    # A liveness probe on the same path would have a draining process killed.
    assert [container[probe]["httpGet"]["path"] for probe in PROBES] == [
        "/health/live",
        "/health/ready",
        "/health/live",
    ]


def test_every_variable_is_a_setting(container: dict[str, Any]) -> None:
    known = {PREFIX + name.upper() for name in Settings.model_fields}
    assert {item["name"] for item in container["env"]} <= known


def test_the_environment_is_read_as_settings(settings: Settings) -> None:
    assert settings.host == "0.0.0.0"


def test_the_port_is_the_same_everywhere(container: dict[str, Any], settings: Settings) -> None:
    ports = {port["name"]: port["containerPort"] for port in container["ports"]}
    assert ports == {"http": settings.port, "operation": settings.metrics_port}
    assert [port["targetPort"] for port in read("service.yaml")["spec"]["ports"]] == list(ports)
    callers, watchers = read("network_policy.yaml")["spec"]["ingress"]
    assert callers == {"ports": [{"protocol": "TCP", "port": "http"}]}
    # What the metrics tell is nobody's business outside.
    assert watchers == {"from": [{"namespaceSelector": {}}], "ports": [{"protocol": "TCP", "port": "operation"}]}


def test_a_slow_start_is_waited_for(container: dict[str, Any]) -> None:
    # Measured on a busy node: 27 s. The probe gives up after period times threshold (Kubernetes, "Configure Probes").
    probe = container["startupProbe"]
    assert probe["periodSeconds"] * probe["failureThreshold"] >= 2 * 27


def test_no_secret_stands_in_a_manifest(container: dict[str, Any]) -> None:
    secret = {"FITMENT_API_KEYS", "FITMENT_RATE_STORAGE"}
    assert {item["name"] for item in container["env"] if "secretKeyRef" in item.get("valueFrom", {})} == secret


def test_a_pod_without_keys_does_not_serve_everybody(settings: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("FITMENT_API_KEYS", raising=False)
    with pytest.raises(BadSettings, match="FITMENT_API_KEYS"):
        load_settings({}, keys_required=settings.keys_required)


def test_kubernetes_puts_no_variables_of_its_own_into_the_environment(pod: dict[str, Any]) -> None:
    # It names them after the service: FITMENT_SERVICE_PORT would be refused as an unknown setting.
    assert pod["enableServiceLinks"] is False


def test_the_grace_period_covers_the_whole_stop(
    pod: dict[str, Any], container: dict[str, Any], settings: Settings
) -> None:
    before_s = container["lifecycle"]["preStop"]["sleep"]["seconds"]
    assert pod["terminationGracePeriodSeconds"] > before_s + settings.drain_s + settings.stop_timeout_s


def test_the_drain_lasts_longer_than_readiness_takes_to_be_seen(container: dict[str, Any], settings: Settings) -> None:
    probe = container["readinessProbe"]
    assert settings.drain_s > probe["periodSeconds"] * probe["failureThreshold"]


def test_the_pod_runs_as_the_user_of_the_image(pod: dict[str, Any]) -> None:
    image = next(line.split()[1] for line in (ROOT / "Dockerfile").read_text().splitlines() if line.startswith("USER"))
    context = pod["securityContext"]
    assert f"{context['runAsUser']}:{context['runAsGroup']}" == image


def test_the_pod_gives_up_every_privilege(pod: dict[str, Any], container: dict[str, Any]) -> None:
    assert pod["securityContext"]["runAsNonRoot"] is True
    assert pod["securityContext"]["seccompProfile"] == {"type": "RuntimeDefault"}
    assert pod["automountServiceAccountToken"] is False
    assert container["securityContext"] == {
        "allowPrivilegeEscalation": False,
        "privileged": False,
        "readOnlyRootFilesystem": True,
        "runAsNonRoot": True,
        "capabilities": {"drop": ["ALL"]},
    }


def test_the_process_is_bounded_in_memory_and_processor(container: dict[str, Any]) -> None:
    for kind in ("requests", "limits"):
        assert set(container["resources"][kind]) == {"cpu", "memory"}


@pytest.mark.parametrize("name", ["service.yaml", "disruption_budget.yaml", "network_policy.yaml"])
def test_the_others_select_the_pods(name: str) -> None:
    labels = read("deployment.yaml")["spec"]["template"]["metadata"]["labels"]
    spec = read(name)["spec"]
    selector = spec.get("podSelector", spec.get("selector"))
    assert selector.get("matchLabels", selector) == labels


def test_the_autoscaler_scales_the_deployment_and_keeps_one_to_spare() -> None:
    deployment, scaler = read("deployment.yaml"), read("autoscaler.yaml")["spec"]
    target = scaler["scaleTargetRef"]
    assert (target["kind"], target["name"]) == ("Deployment", deployment["metadata"]["name"])
    # A number there would undo the autoscaler's with every change that is applied.
    assert "replicas" not in deployment["spec"]
    assert scaler["minReplicas"] > read("disruption_budget.yaml")["spec"]["maxUnavailable"]


def test_nothing_goes_out() -> None:
    policy = read("network_policy.yaml")["spec"]
    assert set(policy["policyTypes"]) == {"Ingress", "Egress"}
    assert policy["egress"] == []


def test_the_base_of_the_image_can_be_named_by_its_digest() -> None:
    lines = (ROOT / "Dockerfile").read_text(encoding="utf-8").splitlines()
    bases = [line.split()[1] for line in lines if line.startswith("FROM")]
    assert len(bases) == 2
    assert set(bases) == {"${BASE_IMAGE}${BASE_DIGEST:+@$BASE_DIGEST}"}
